import {
  formatCivilDate,
  type ProblemParam,
  parseCivilDate,
  problem,
  type Result,
  type ResultsMapping,
} from "@roundbook/schemas";

export type DateFormat = ResultsMapping["date"]["format"];
export type DecimalMark = "." | ",";

export const good = <T>(value: T): Result<T> => ({ ok: true, value });
export const bad = (
  code: string,
  params: Readonly<Record<string, ProblemParam>>,
): Result<never> => ({
  ok: false,
  problems: [problem("", code, params)],
});

const SHAPES: Readonly<Record<DateFormat, RegExp>> = {
  "YYYY-MM-DD": /^(?<y>\d{4})-(?<m>\d\d)-(?<d>\d\d)$/,
  "DD/MM/YYYY": /^(?<d>\d\d?)\/(?<m>\d\d?)\/(?<y>\d{4})$/,
  "MM/DD/YYYY": /^(?<m>\d\d?)\/(?<d>\d\d?)\/(?<y>\d{4})$/,
  "DD.MM.YYYY": /^(?<d>\d\d?)\.(?<m>\d\d?)\.(?<y>\d{4})$/,
  "D MMM YYYY": /^(?<d>\d\d?) (?<m>[A-Za-z]{3}) (?<y>\d{4})$/,
};
const MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split(" ");

/** ISO date of a cell. `today` (ISO) bars days that are still to come: nothing was done then. */
export function readDate(text: string, format: DateFormat, today?: string): Result<string> {
  const found = SHAPES[format].exec(text)?.groups;
  if (!found) return bad("date-format", { text, format });
  const { y = "", m = "", d = "" } = found;
  const month = /\d/.test(m) ? Number(m) : MONTHS.indexOf(m.toLowerCase()) + 1;
  const iso = `${y}-${String(month).padStart(2, "0")}-${d.padStart(2, "0")}`;
  const day = parseCivilDate(iso);
  if (day === undefined) return bad("date-no-such-day", { text, format });
  if (today !== undefined && iso > today) return bad("date-in-future", { text, today });
  return good(formatCivilDate(day));
}

const NUMBER = {
  ".": /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i,
  ",": /^[+-]?(\d+,?\d*|,\d+)(e[+-]?\d{1,3})?$/i,
};

/** Nobody wrote a longer number; matching far longer text takes time with the square of its length. */
export const LONGEST_FIGURE = 100;

/** A finite number with the file's decimal mark and no thousands separators, which would be a guess. */
export function readNumber(text: string, decimal: DecimalMark): Result<number> {
  const fits = text.length <= LONGEST_FIGURE && NUMBER[decimal].test(text);
  const value = fits ? Number(text.replace(",", ".")) : Number.NaN;
  return Number.isFinite(value)
    ? good(value)
    : bad("number-format", { text: text.slice(0, LONGEST_FIGURE), decimal });
}

/** A whole number, also when an export wrote it `3.0`. */
export function readWhole(text: string, decimal: DecimalMark): Result<number> {
  const value = readNumber(text, decimal);
  if (!value.ok || Number.isSafeInteger(value.value)) return value;
  return bad("number-not-whole", { text });
}
