import {
  type DateBound,
  type LimitDefinition,
  parseCivilDate,
  particularsInOrder,
  pointKind,
} from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

export const DATE_SIDES = ["notBefore", "notAfter"] as const;
export type DateSide = (typeof DATE_SIDES)[number];

/** A day as a form edits it: written out (`day`), or counted from something. */
export interface DateFields {
  /** "day", or what it is counted from: "today", "asset.x", "answers.x". */
  readonly from: string;
  readonly day: string;
  readonly sign: "plus" | "minus";
  readonly count: number;
  readonly unit: "D" | "W" | "M" | "Y";
}

const DURATION = /^P(\d+)([DWMY])$/;

/** Null for a bound that only its JSON can say, such as one of years and months. */
export const dateFields = (bound: DateBound): DateFields | null => {
  const none = { day: "", sign: "plus", count: 0, unit: "M" } as const;
  if (typeof bound === "string") return { ...none, from: "day", day: bound };
  const { from, plus, minus } = bound;
  if (plus !== undefined && minus !== undefined) return null;
  const moved = plus ?? minus;
  if (moved === undefined) return { ...none, from };
  const [, count, unit] = DURATION.exec(moved) ?? [];
  if (count === undefined) return null;
  const sign = plus === undefined ? "minus" : "plus";
  return { ...none, from, sign, count: Number(count), unit: unit as DateFields["unit"] };
};

/** What was typed for a day or a distance: "2027-01-31", "3 months before", "0", "". */
export const readDay = (text: string): string | undefined =>
  parseCivilDate(text.trim()) === undefined ? undefined : text.trim();

const UNITS: Readonly<Record<string, DateFields["unit"]>> = {
  day: "D",
  week: "W",
  month: "M",
  year: "Y",
};

/** "3 months after", "2 weeks before"; empty for the day itself; nothing for what is neither. */
export const readDistance = (
  text: string,
): Pick<DateFields, "sign" | "count" | "unit"> | undefined => {
  if (text.trim() === "") return { sign: "plus", count: 0, unit: "D" };
  const match = /^\s*(\d{1,4})\s*(day|week|month|year)s?\s+(before|after)\s*$/i.exec(text);
  const unit = UNITS[(match?.[2] ?? "").toLowerCase()];
  if (!match || unit === undefined) return undefined;
  const sign = match[3]?.toLowerCase() === "before" ? "minus" : "plus";
  return { sign, count: Number(match[1]), unit };
};

export const dateBound = ({ from, day, sign, count, unit }: DateFields): DateBound => {
  if (from === "day") return day;
  return count === 0 ? { from } : { from, [sign]: `P${count}${unit}` };
};

export const sideOf = (limit: LimitDefinition): DateSide | null =>
  DATE_SIDES.find((side) => limit[side] !== undefined) ?? null;

export const setDate = (
  { notBefore: _, notAfter: __, ...rest }: LimitDefinition,
  side: DateSide,
  bound: DateBound,
): LimitDefinition => ({ ...rest, [side]: bound });

/** What a day may be counted from: today, dates known of the asset, other dates answered. */
export const dateOrigins = (document: DraftDocument, point: string): readonly string[] => [
  "today",
  ...particularsInOrder(document.particulars ?? {}).flatMap(([name, { format }]) =>
    format === "date" ? [`asset.${name}`] : [],
  ),
  ...Object.entries(document.properties).flatMap(([name, one]) =>
    name !== point && pointKind(one) === "date" ? [`answers.${name}`] : [],
  ),
];
