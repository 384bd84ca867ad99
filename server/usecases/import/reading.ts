import type { Comparator, PointDefinition, Reading, Result } from "@roundbook/schemas";
import { bad, type DecimalMark, good, LONGEST_FIGURE, readNumber } from "./cell.ts";

const READING = /^(<=|>=|≤|≥|<|>)?\s*([+-]?[\d.,]+(?:e[+-]?\d+)?)\s*(\D.*)?$/i;
const COMPARATOR: Readonly<Record<string, Comparator>> = {
  "<": "<",
  "<=": "<=",
  "≤": "<=",
  ">": ">",
  ">=": ">=",
  "≥": ">=",
};
/** Signs people write for UCUM codes. */
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/^°\s*C$/, "Cel"],
  [/^°\s*F$/, "[degF]"],
  [/[Ωω]/gu, "Ohm"],
  [/²/g, "2"],
  [/³/g, "3"],
  [/^µ/, "u"],
];

/** `>200 MOhm`, `49.9`, `0,23 Ω`: a number, perhaps censored, in the unit written or mapped. */
export function readReading(
  point: PointDefinition,
  unitMapped: string | undefined,
  text: string,
  decimal: DecimalMark,
): Result<Reading> {
  const start = text.slice(0, LONGEST_FIGURE);
  const [, mark, digits = "", written] = (start === text ? READING.exec(text) : null) ?? [];
  const value = readNumber(digits, decimal);
  if (!value.ok) return bad("number-format", { text: start, decimal });
  const own = point.quantity?.unit ?? "1";
  const accepted = [own, ...(point.quantity?.alsoIn ?? [])];
  const sign = written?.trim() ?? unitMapped ?? own;
  const unit = SIGNS.reduce((code, [from, to]) => code.replace(from, to), sign);
  if (!accepted.includes(unit)) return bad("unit-not-accepted", { unit: sign, accepted });
  const comparator = mark ? COMPARATOR[mark] : undefined;
  return good({ value: value.value, unit, ...(comparator ? { comparator } : {}) });
}
