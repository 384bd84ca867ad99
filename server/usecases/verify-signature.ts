import { createPublicKey, verify } from "node:crypto";

/** 0x04, then x and y of 32 bytes each (SEC 1 §2.3.3, uncompressed). */
const POINT_BYTES = 65;

/**
 * Whether `signature` (IEEE P1363, base64url) is the device key's ECDSA P-256 over the 32 bytes of
 * the entry's hash. False for anything that is no key or no signature.
 */
export function verifySignature(key: string, hash: string, signature: string): boolean {
  const point = Buffer.from(key, "base64url");
  if (point.length !== POINT_BYTES || point[0] !== 4) return false;
  try {
    const publicKey = createPublicKey({
      format: "jwk",
      key: {
        kty: "EC",
        crv: "P-256",
        x: point.subarray(1, 33).toString("base64url"),
        y: point.subarray(33).toString("base64url"),
      },
    });
    return verify(
      "sha256",
      Buffer.from(hash, "hex"),
      { key: publicKey, dsaEncoding: "ieee-p1363" },
      Buffer.from(signature, "base64url"),
    );
  } catch {
    // A point that lies on no curve is no key.
    return false;
  }
}
