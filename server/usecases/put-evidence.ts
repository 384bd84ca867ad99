import { createHash } from "node:crypto";
import { problem } from "@roundbook/schemas";
import type { Blobs } from "../blobs/blobs.ts";
import { imageType } from "../blobs/image-type.ts";
import { evidence } from "../store/schema/estate.ts";
import type { Context } from "./context.ts";
import { Refusal } from "./refusal.ts";

/** Stores a photo under the hash it was announced by; the same again changes nothing. */
export async function putEvidence(
  ctx: Context & { readonly blobs: Blobs },
  sha256: string,
  bytes: Uint8Array,
): Promise<void> {
  const found = createHash("sha256").update(bytes).digest("hex");
  if (found !== sha256)
    throw new Refusal("invalid", "hash-differs", [
      problem("", "hash-differs", { expected: sha256, found }),
    ]);
  const mime = imageType(bytes);
  if (!mime)
    throw new Refusal("wrong-type", "not-a-picture", [
      problem("", "not-a-picture", { accepted: ["image/jpeg", "image/png", "image/webp"] }),
    ]);
  await ctx.blobs.put(sha256, bytes);
  const row = { sha256, mime, size: bytes.byteLength, receivedAt: ctx.clock() };
  await ctx.store.write((tx) => tx.insert(evidence).values(row).onConflictDoNothing());
}
