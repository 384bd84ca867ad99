import { randomBytes } from "node:crypto";

/**
 * A maker of RFC 9562 version 7 UUIDs: milliseconds, then a counter that only grows within one
 * process (§6.2, method 1), then randomness. Ids made later sort later, even in one millisecond
 * and when the clock is set back.
 */
export function createNewId(
  clock: () => number,
  random: (size: number) => Uint8Array = randomBytes,
): () => string {
  let last = 0;
  let counter = 0;
  return () => {
    const now = clock();
    const bytes = Buffer.from(random(16));
    if (now > last) {
      last = now;
      // The top bit stays free, so that the counter has room to grow within the millisecond.
      counter = bytes.readUInt16BE(6) & 0x7ff;
    } else if (++counter > 0xfff) {
      last += 1;
      counter = 0;
    }
    bytes.writeUIntBE(last, 0, 6);
    bytes.writeUInt16BE(0x7000 | counter, 6);
    bytes.writeUInt8(0x80 | (bytes.readUInt8(8) & 0x3f), 8);
    const hex = bytes.toString("hex");
    return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
  };
}
