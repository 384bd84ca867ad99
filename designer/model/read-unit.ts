import { printUnit } from "@roundbook/runner/form";
import { UNIT_CODES, unitOf } from "@roundbook/schemas";

const plain = (text: string): string => text.toLowerCase().replace(/[\s·*]/g, "");

const simple = (text: string): string | undefined => {
  if (unitOf(text)) return text;
  const exact = UNIT_CODES.find((code) => printUnit(code) === text);
  if (exact) return exact;
  // MΩ and mΩ differ by their case alone: only a unit that no other reads like is taken so.
  const alike = UNIT_CODES.filter((code) =>
    [plain(printUnit(code)), plain(code)].includes(plain(text)),
  );
  return alike.length === 1 ? alike[0] : undefined;
};

/** The UCUM code of a unit as people write it: "°C", "mm²", "Ω/m", or the code itself. */
export const readUnit = (text: string): string | undefined => {
  const trimmed = text.trim();
  if (trimmed === "") return undefined;
  const whole = simple(trimmed);
  if (whole) return whole;
  const [over, under, ...more] = trimmed.split("/").map((part) => simple(part.trim()));
  const code = over && under && more.length === 0 ? `${over}/${under}` : undefined;
  return code && unitOf(code) ? code : undefined;
};

/** Units to offer while one is typed, as people write them. */
export const UNITS_OFFERED: readonly string[] = [
  ...new Set(UNIT_CODES.map(printUnit).filter((printed) => printed !== "")),
];
