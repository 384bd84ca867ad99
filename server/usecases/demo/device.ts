import { createHash, generateKeyPairSync, sign } from "node:crypto";
import { type Entry, entryBytes, type SignedEntry } from "@roundbook/schemas";
import type { Context, Session } from "../context.ts";
import { enrolDevice } from "../enrol-device.ts";

export interface SigningKey {
  /** The public half as devices enrol it: the uncompressed point in base64url. */
  readonly key: string;
  sign(entry: Entry): SignedEntry;
}

/** A P-256 key that signs as devices do: over the hash's bytes, IEEE P1363, base64url. */
export function createSigningKey(): SigningKey {
  const { publicKey, privateKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const { x = "", y = "" } = publicKey.export({ format: "jwk" });
  const parts = [Buffer.of(4), Buffer.from(x, "base64url"), Buffer.from(y, "base64url")];
  return {
    key: Buffer.concat(parts).toString("base64url"),
    sign(entry) {
      const hash = createHash("sha256").update(entryBytes(entry)).digest();
      const signature = sign("sha256", hash, { key: privateKey, dsaEncoding: "ieee-p1363" });
      return {
        entry,
        hash: hash.toString("hex"),
        signature: signature.toString("base64url"),
        contents: [],
      };
    },
  };
}

/** A person's phone in the demo estate: its key lives as long as the opening does. */
export interface DemoDevice extends SigningKey {
  readonly id: string;
  readonly session: Session;
}

export async function enrolDemoDevice(
  ctx: Context,
  session: Session,
  label: string,
): Promise<DemoDevice> {
  const signing = createSigningKey();
  const id = ctx.newId();
  await enrolDevice(ctx, session, { device: id, key: signing.key, label });
  return { ...signing, id, session };
}
