const starts = (bytes: Uint8Array, offset: number, ...values: readonly number[]): boolean =>
  values.every((value, index) => bytes[offset + index] === value);

export type ImageType = "image/jpeg" | "image/png" | "image/webp";

/** The kind of picture by its first bytes, whatever its sender called it. */
export function imageType(bytes: Uint8Array): ImageType | undefined {
  if (starts(bytes, 0, 0xff, 0xd8, 0xff)) return "image/jpeg";
  if (starts(bytes, 0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return "image/png";
  if (starts(bytes, 0, 0x52, 0x49, 0x46, 0x46) && starts(bytes, 8, 0x57, 0x45, 0x42, 0x50))
    return "image/webp";
  return undefined;
}
