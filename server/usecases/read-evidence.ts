import type { Blobs } from "../blobs/blobs.ts";
import { imageType } from "../blobs/image-type.ts";
import type { Context } from "./context.ts";

/** A photo with its kind by its own bytes, or null. */
export async function readEvidence(
  ctx: Context & { readonly blobs: Blobs },
  sha256: string,
): Promise<{ mime: string; bytes: Uint8Array } | null> {
  const bytes = await ctx.blobs.get(sha256);
  return bytes ? { mime: imageType(bytes) ?? "application/octet-stream", bytes } : null;
}
