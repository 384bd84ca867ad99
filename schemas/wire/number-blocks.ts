import type { FromSchema } from "json-schema-to-ts";
import { UUID } from "../shared/patterns.ts";

/** Numbers in a block. */
export const NUMBERS_AT_ONCE = 50;
/** Digits at the end of an asset number that count; a longer run is a code of somebody else's. */
export const SERIAL_DIGITS = 9;

/** POST /api/number-blocks: asset numbers that a device may give out without a network. */
export const LEASE_NUMBERS_SCHEMA = {
  type: "object",
  properties: {
    device: { type: "string", pattern: UUID },
    /** Where they are given out. */
    site: { type: "string", pattern: UUID },
    /** What stands before the digits, without a digit at its end; may be empty. */
    prefix: { type: "string", maxLength: 50, pattern: "^(|.*[^0-9])$" },
    /** What would be the next number there. */
    near: { type: "integer", minimum: 0, maximum: 999_999_900 },
    /** Id of the newest such block the device has; null while it has none. */
    after: { type: ["integer", "null"], minimum: 0 },
  },
  required: ["device", "site", "prefix", "near", "after"],
  additionalProperties: false,
} as const;
export type LeaseNumbers = FromSchema<typeof LEASE_NUMBERS_SCHEMA>;

/** Both ends belong to it. */
export interface NumberBlock {
  readonly id: number;
  readonly prefix: string;
  readonly first: number;
  readonly last: number;
}

/** An asset number taken apart: what stands before its digits, and what they count. */
export interface SerialNumber {
  readonly prefix: string;
  readonly value: number;
  readonly width: number;
}

/** Null for a number that does not end in digits that count. */
export const serialOf = (number: string): SerialNumber | null => {
  const digits = /\d+$/.exec(number)?.[0];
  if (digits === undefined || digits.length > SERIAL_DIGITS) return null;
  return {
    prefix: number.slice(0, number.length - digits.length),
    value: Number(digits),
    width: digits.length,
  };
};
