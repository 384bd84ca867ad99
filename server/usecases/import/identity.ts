import { hash } from "node:crypto";
import { canonicalize } from "@roundbook/schemas";

const sha256 = (value: unknown) => hash("sha256", canonicalize(value));

/**
 * UUID version 8 (RFC 9562 §5.8) from SHA-256 of what names the thing: the same row of the same
 * source is the same entry on any server.
 */
export function derivedId(...name: readonly (string | number | null)[]): string {
  const bytes = Buffer.from(sha256(name).slice(0, 32), "hex");
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x80;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = bytes.toString("hex");
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    hex.slice(12, 16),
    hex.slice(16, 20),
    hex.slice(20),
  ].join("-");
}

/** What a row says: SHA-256 over its mapped columns and their cells, whatever their order in the file. */
export const contentOf = (cells: Readonly<Record<string, string>>): string => sha256(cells);
