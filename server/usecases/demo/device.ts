import { createHash, generateKeyPairSync, type KeyObject, sign } from "node:crypto";
import { type Entry, entryBytes, type SignedEntry } from "@roundbook/schemas";
import type { Context, Session } from "../context.ts";
import { enrolDevice } from "../enrol-device.ts";

/** A person's phone in the demo estate: its key lives as long as the opening does. */
export interface DemoDevice {
  readonly id: string;
  readonly session: Session;
  sign(entry: Entry): SignedEntry;
}

const signature = (privateKey: KeyObject, hash: Uint8Array): string =>
  sign("sha256", hash, { key: privateKey, dsaEncoding: "ieee-p1363" }).toString("base64url");

export async function enrolDemoDevice(
  ctx: Context,
  session: Session,
  label: string,
): Promise<DemoDevice> {
  const { publicKey, privateKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const { x = "", y = "" } = publicKey.export({ format: "jwk" });
  const point = Buffer.concat([
    Buffer.of(4),
    Buffer.from(x, "base64url"),
    Buffer.from(y, "base64url"),
  ]);
  const id = ctx.newId();
  await enrolDevice(ctx, session, { device: id, key: point.toString("base64url"), label });
  return {
    id,
    session,
    sign(entry) {
      const hash = createHash("sha256").update(entryBytes(entry)).digest();
      const signed = signature(privateKey, hash);
      return { entry, hash: hash.toString("hex"), signature: signed, contents: [] };
    },
  };
}
