import { parseDuration } from "@roundbook/schemas";

const UNITS = { day: "D", week: "W", month: "M", year: "Y" } as const;
const PART = /(\d{1,5}|an?|one)?\s*(day|week|month|year)s?/gi;
const WHOLE = /^\s*((\d{1,5}|an?|one)?\s*(day|week|month|year)s?[\s,]*(and\s+)?)+$/i;
const ORDER = "YMWD";

/** "6 months", "month" or "1 year 6 months" as an ISO 8601 duration; a bare number is days. */
export const readLength = (text: string): string | undefined => {
  const days = /^\s*(\d{1,5})\s*$/.exec(text)?.[1];
  if (days !== undefined) return `P${Number(days)}D`;
  if (!WHOLE.test(text)) return undefined;
  const parts = [...text.matchAll(PART)].map(([, count = "1", unit = ""]) => ({
    count: /^\d/.test(count) ? Number(count) : 1,
    letter: UNITS[unit.toLowerCase() as keyof typeof UNITS],
  }));
  const inOrder = parts.toSorted((a, b) => ORDER.indexOf(a.letter) - ORDER.indexOf(b.letter));
  const iso = `P${inOrder.map(({ count, letter }) => `${count}${letter}`).join("")}`;
  return parseDuration(iso) === undefined ? undefined : iso;
};

/** A length that may be none: undefined for none, null for what is neither. */
export const readMargin = (text: string): string | undefined | null => {
  if (text.trim() === "") return undefined;
  const read = readLength(text);
  if (read === undefined) return null;
  return /^P(0[YMWD])+$/.test(read) ? undefined : read;
};
