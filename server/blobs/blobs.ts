/**
 * Evidence by its SHA-256 in lower-case hex. Content never changes under a hash, so that a folder
 * and an object store can both keep it; callers have checked that the bytes have the hash.
 */
export interface Blobs {
  has(sha256: string): Promise<boolean>;
  put(sha256: string, bytes: Uint8Array): Promise<void>;
  get(sha256: string): Promise<Uint8Array | undefined>;
}
