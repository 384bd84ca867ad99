import { createPublicKey } from "node:crypto";
import { type EnrolDevice, problem } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readDevice } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

/** Bytes 1–32 and 33–64 of the uncompressed point are its coordinates; the curve is checked here. */
function isPointOnCurve(key: string): boolean {
  const bytes = Buffer.from(key, "base64url");
  if (bytes.length !== 65 || bytes[0] !== 4) return false;
  const x = bytes.subarray(1, 33).toString("base64url");
  const y = bytes.subarray(33).toString("base64url");
  try {
    createPublicKey({ key: { kty: "EC", crv: "P-256", x, y }, format: "jwk" });
    return true;
  } catch {
    return false;
  }
}

/** Enrols a device's key for the signed-in person; the same again changes nothing. */
export async function enrolDevice(ctx: Context, by: Session, given: EnrolDevice): Promise<void> {
  if (!isPointOnCurve(given.key))
    throw new Refusal("invalid", "not-a-key", [problem("/key", "not-a-key")]);
  const known = await readDevice(ctx, given.device);
  if (known) {
    if (known.key === given.key && known.person === by.person) return;
    throw new Refusal("conflict", "device-enrolled-otherwise", [
      problem("/device", "device-enrolled-otherwise"),
    ]);
  }
  await appendNow(ctx, by, {
    kind: "device-enrolled",
    asset: null,
    body: { device: given.device, person: by.person, key: given.key, label: given.label },
  });
}
