import { createPublicKey, type KeyObject, verify } from "node:crypto";

/** 0x04, then x and y of 32 bytes each (SEC 1 §2.3.3, uncompressed). */
const POINT_BYTES = 65;

/** The P-256 key of an uncompressed point in base64url, or null when it is no point of the curve. */
export function publicKeyOf(key: string): KeyObject | null {
  const point = Buffer.from(key, "base64url");
  if (point.length !== POINT_BYTES || point[0] !== 4) return null;
  const x = point.subarray(1, 33).toString("base64url");
  const y = point.subarray(33).toString("base64url");
  try {
    return createPublicKey({ format: "jwk", key: { kty: "EC", crv: "P-256", x, y } });
  } catch {
    return null;
  }
}

/**
 * Whether `signature` (IEEE P1363, base64url) is the device key's ECDSA P-256 over the 32 bytes of
 * the entry's hash. False for anything that is no key or no signature.
 */
export function verifySignature(key: string, hash: string, signature: string): boolean {
  const publicKey = publicKeyOf(key);
  if (publicKey === null) return false;
  return verify(
    "sha256",
    Buffer.from(hash, "hex"),
    { key: publicKey, dsaEncoding: "ieee-p1363" },
    Buffer.from(signature, "base64url"),
  );
}
