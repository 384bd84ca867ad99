import type { Comparator, Reading } from "@roundbook/schemas";

export interface WrittenReading {
  readonly value: number;
  readonly comparator?: Comparator;
}

const READING = /^(<=|>=|<|>)?-?(\d+\.?\d*|\.\d+)$/;
const SIGN = /^(<=|>=|<|>)/;
const LONGEST = 24;

/** Comma or point, typographic signs and spaces, all to one spelling: "≥ 0,5" is ">=0.5". */
const plain = (text: string): string =>
  text
    .replace(/[\s\u00a0]/g, "")
    .replaceAll("≤", "<=")
    .replaceAll("≥", ">=")
    .replaceAll("−", "-")
    .replaceAll(",", ".");

/**
 * What a person wrote in a reading box, or `undefined` when it is not a number. Two points ("1,000.5")
 * are refused rather than guessed at.
 */
export function parseReading(text: string): WrittenReading | undefined {
  const written = plain(text);
  if (written.length > LONGEST || !READING.test(written)) return undefined;
  const comparator = SIGN.exec(written)?.[0] as Comparator | undefined;
  const value = Number(written.slice(comparator?.length ?? 0));
  if (!Number.isFinite(value)) return undefined;
  return comparator === undefined ? { value } : { value, comparator };
}

/** A kept reading as it stands in the box: "<0.3". */
export const readingText = (reading: Reading): string => {
  const text = String(reading.value);
  // A box takes digits only, so 1e-7 is written out.
  const digits = text.includes("e") ? reading.value.toFixed(12).replace(/\.?0+$/, "") : text;
  return `${reading.comparator ?? ""}${digits}`;
};

export type PadKey =
  | "0"
  | "1"
  | "2"
  | "3"
  | "4"
  | "5"
  | "6"
  | "7"
  | "8"
  | "9"
  | "."
  | "<"
  | ">"
  | "-"
  | "delete";

/** Signs go where they belong wherever the pen stands; pressing one again takes it away. */
export function pressKey(text: string, key: PadKey): string {
  const sign = SIGN.exec(text)?.[0] ?? "";
  const rest = text.slice(sign.length);
  switch (key) {
    case "delete":
      return text.slice(0, -1);
    case "<":
    case ">":
      return sign === key ? rest : key + rest;
    case "-":
      return sign + (rest.startsWith("-") ? rest.slice(1) : `-${rest}`);
    case ".":
      return /[.,]/.test(rest) ? text : `${text}.`;
    default:
      return text.length >= LONGEST ? text : text + key;
  }
}
