import { MONTHS, WEEKDAYS } from "./calendar.ts";
import { dateWords } from "./dates.ts";

/** A day of a month: its number, -1 for its last; or a weekday of it, `nth` -1 for the last one. */
export type OnDay = { readonly day: number } | { readonly nth: number; readonly weekday: number };

/** The forms of a recurrence rule that have a sentence of their own; weekdays count from Monday, 1. */
export type RruleForm = {
  readonly every: number;
  /** Its COUNT or UNTIL as written. */
  readonly ends?: string;
} & (
  | { readonly by: "day" }
  | { readonly by: "week"; readonly days: readonly number[] }
  | { readonly by: "month"; readonly on: OnDay }
  | { readonly by: "year"; readonly month: number; readonly on: OnDay }
);

const CODES = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"];
const MONTH_DAY = /^(-1|[1-9]|[12]\d|3[01])$/;
const KNOWN = /^(FREQ|INTERVAL|COUNT|UNTIL|BYDAY|BYMONTHDAY|BYMONTH|RSCALE|SKIP)$/;

/** Whether a month or year may lack the day: it then is the last there is (RFC 7529 §4.1). */
const mayLack = (day: number, month?: number): boolean =>
  day > (month === undefined || month === 2 ? 28 : [4, 6, 9, 11].includes(month) ? 30 : 31);

function onDayOf(parts: ReadonlyMap<string, string>): OnDay | null {
  const [byDay, byMonthDay] = [parts.get("BYDAY"), parts.get("BYMONTHDAY")];
  if ((byDay === undefined) === (byMonthDay === undefined)) return null;
  if (byMonthDay !== undefined) {
    if (!MONTH_DAY.test(byMonthDay)) return null;
    // A day that some months lack has a sentence only where it says what becomes of it.
    const skips = parts.get("RSCALE") === "GREGORIAN" && parts.get("SKIP") === "BACKWARD";
    const month = parts.get("BYMONTH");
    const lacks = mayLack(Number(byMonthDay), month === undefined ? undefined : Number(month));
    return skips === lacks ? { day: Number(byMonthDay) } : null;
  }
  const [, nth, code = ""] = /^(-1|[1-4])([A-Z]{2})$/.exec(byDay ?? "") ?? [];
  const weekday = CODES.indexOf(code) + 1;
  return weekday === 0 || parts.has("SKIP") ? null : { nth: Number(nth), weekday };
}

/** A recurrence rule in one of its common forms, or null. */
export function rruleForm(text: string): RruleForm | null {
  const pairs = text
    .toUpperCase()
    .split(";")
    .map((part) => part.split("="));
  const parts = new Map(pairs.map(([name = "", value = ""]) => [name, value]));
  if (parts.size < pairs.length || [...parts.keys()].some((name) => !KNOWN.test(name))) return null;
  const every = Number(parts.get("INTERVAL") ?? 1);
  if (!Number.isInteger(every) || every < 1 || (parts.has("COUNT") && parts.has("UNTIL")))
    return null;
  const end = pairs.find(([name]) => name === "COUNT" || name === "UNTIL");
  const base = { every, ...(end ? { ends: end.join("=") } : {}) };
  const only = (...names: string[]) =>
    ["BYDAY", "BYMONTHDAY", "BYMONTH", "SKIP"].every(
      (name) => names.includes(name) || !parts.has(name),
    );
  const on = onDayOf(parts);
  switch (parts.get("FREQ")) {
    case "DAILY":
      return only() ? { ...base, by: "day" } : null;
    case "WEEKLY": {
      const days = (parts.get("BYDAY") ?? "").split(",").map((code) => CODES.indexOf(code) + 1);
      const told = parts.has("BYDAY");
      if (!only("BYDAY") || (told && days.includes(0))) return null;
      return { ...base, by: "week", days: told ? days.toSorted((a, b) => a - b) : [] };
    }
    case "MONTHLY":
      return on && !parts.has("BYMONTH") ? { ...base, by: "month", on } : null;
    case "YEARLY": {
      const month = Number(parts.get("BYMONTH"));
      const fits = Number.isInteger(month) && month >= 1 && month <= 12;
      return on && fits ? { ...base, by: "year", month, on } : null;
    }
    default:
      return null;
  }
}

function onDayParts(on: OnDay, month?: number): string[] {
  if ("nth" in on) return [`BYDAY=${on.nth}${CODES[on.weekday - 1]}`];
  const skip = mayLack(on.day, month) ? ["RSCALE=GREGORIAN", "SKIP=BACKWARD"] : [];
  return [`BYMONTHDAY=${on.day}`, ...skip];
}

/** The value of an RRULE property; `rruleForm` reads it back. */
export function rruleText(form: RruleForm): string {
  const freq = { day: "DAILY", week: "WEEKLY", month: "MONTHLY", year: "YEARLY" }[form.by];
  const parts = [`FREQ=${freq}`, ...(form.every > 1 ? [`INTERVAL=${form.every}`] : [])];
  if (form.by === "week" && form.days.length > 0)
    parts.push(`BYDAY=${form.days.map((day) => CODES[day - 1]).join(",")}`);
  if (form.by === "year") parts.push(`BYMONTH=${form.month}`);
  if (form.by === "month") parts.push(...onDayParts(form.on));
  if (form.by === "year") parts.push(...onDayParts(form.on, form.month));
  return [...parts, ...(form.ends ? [form.ends] : [])].join(";");
}

const NTH: Readonly<Record<number, string>> = {
  1: "first",
  2: "second",
  3: "third",
  4: "fourth",
  [-1]: "last",
};

/** "1st", "22nd", "30th". */
export function ordinal(count: number): string {
  const teen = count % 100 > 10 && count % 100 < 14;
  return `${count}${(!teen && ["", "st", "nd", "rd"][count % 10]) || "th"}`;
}

/** "the last Friday", "the 30th", "the last day". */
export function onDayWords(on: OnDay): string {
  if ("nth" in on) return `the ${NTH[on.nth]} ${WEEKDAYS[on.weekday - 1]}`;
  return on.day === -1 ? "the last day" : `the ${ordinal(on.day)}`;
}

const ELSE_LAST = ", else the last day";

const listed = (words: readonly string[]): string =>
  [words.slice(0, -1).join(", "), words.at(-1)].filter(Boolean).join(" and ");

function onWords(form: RruleForm): string {
  switch (form.by) {
    case "day":
      return "";
    case "week":
      return form.days.length === 0
        ? ""
        : ` on ${listed(form.days.map((day) => WEEKDAYS[day - 1] ?? ""))}`;
    case "month":
      return ` on ${onDayWords(form.on)}${"day" in form.on && mayLack(form.on.day) ? ELSE_LAST : ""}`;
    case "year": {
      const month = MONTHS[form.month - 1];
      if ("nth" in form.on || form.on.day < 0) return ` on ${onDayWords(form.on)} of ${month}`;
      return ` on ${form.on.day} ${month}${mayLack(form.on.day, form.month) ? ELSE_LAST : ""}`;
    }
  }
}

function endWords(ends = ""): string {
  const [name, value = ""] = ends.split("=");
  if (name === "COUNT") return `, ${value} times`;
  const day = value.replace(/^(\d{4})(\d{2})(\d{2}).*$/, "$1-$2-$3");
  return name === "UNTIL" ? `, until ${dateWords(day)}` : "";
}

/** "every 2 weeks on Monday", "each month on the last Friday"; a rarer rule as it is written. */
export function rruleWords(text: string): string {
  const form = rruleForm(text);
  if (form === null) return `by the rule ${text}`;
  const { every, by } = form;
  const begins = every > 1 ? `every ${every} ${by}s` : `each ${by}`;
  return begins + onWords(form) + endWords(form.ends);
}
