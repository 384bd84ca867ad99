import { nearest } from "../../shared/nearest.ts";
import { type Problem, problem, type Result } from "../../shared/problem.ts";
import { checkTogether } from "./check-together.ts";
import {
  badValue,
  type Part,
  type Report,
  readNumbers,
  readOne,
  readParts,
  reporter,
} from "./read-parts.ts";
import { readUntil, readWeekdays } from "./read-values.ts";
import { FREQUENCIES, type Frequency, type Rrule, SKIPS, type Skip, WEEKDAYS } from "./rrule.ts";

/** More than an honest rule needs, and little enough to read at once. */
const LONGEST = 1000;
/** Bounds of ours: RFC 5545 has none. A counted rule has to be walked from its start. */
const MOST_COUNT = 100_000;
const MOST_INTERVAL = 100_000;

const SUB_DAILY_PARTS = ["BYHOUR", "BYMINUTE", "BYSECOND"];
const SUB_DAILY_FREQUENCIES = ["HOURLY", "MINUTELY", "SECONDLY"];
const PARTS = [
  "FREQ",
  "INTERVAL",
  "COUNT",
  "UNTIL",
  "WKST",
  "BYMONTH",
  "BYWEEKNO",
  "BYYEARDAY",
  "BYMONTHDAY",
  "BYDAY",
  "BYSETPOS",
  "RSCALE",
  "SKIP",
];

/** The parts by name; unknown, repeated and sub-daily ones are reported and left out. */
function byName(parts: readonly Part[], report: Report): ReadonlyMap<string, Part> {
  const known = new Map<string, Part>();
  for (const part of parts) {
    const { name, value, start, end } = part;
    const nameStart = start - 1 - name.length;
    if (SUB_DAILY_PARTS.includes(name)) {
      report("rrule-sub-daily", { part: name, value, start: nameStart, end });
    } else if (!PARTS.includes(name)) {
      const near = nearest(name, PARTS);
      report("rrule-unknown-part", { part: name, nearest: near, start: nameStart, end: start - 1 });
    } else if (known.has(name)) {
      report("rrule-repeated-part", { part: name, start: nameStart, end });
    } else known.set(name, part);
  }
  return known;
}

function readWord<Word extends string>(
  part: Part | undefined,
  words: readonly Word[],
  otherwise: Word,
  report: Report,
): Word {
  if (part === undefined) return otherwise;
  const word = words.find((candidate) => candidate === part.value);
  if (word === undefined) badValue(part, report, nearest(part.value, words));
  return word ?? otherwise;
}

function readFrequency(part: Part | undefined, report: Report): Frequency {
  if (part === undefined) report("rrule-no-freq");
  else if (SUB_DAILY_FREQUENCIES.includes(part.value)) {
    const { name, value, start, end } = part;
    report("rrule-sub-daily", { part: name, value, start, end });
    return "DAILY";
  }
  return readWord(part, FREQUENCIES, "DAILY", report);
}

function readSkip(parts: ReadonlyMap<string, Part>, report: Report): Skip {
  const [scale, skip] = [parts.get("RSCALE"), parts.get("SKIP")];
  if (scale !== undefined && scale.value !== "GREGORIAN") {
    const { value, start, end } = scale;
    report("rrule-other-calendar", { value, start, end });
  }
  if (skip !== undefined && scale === undefined)
    report("rrule-skip-without-rscale", { start: skip.start, end: skip.end });
  return readWord(skip, SKIPS, "OMIT", report);
}

/**
 * Reads the value of an RRULE property (RFC 5545 §3.3.10) whose occurrences are days. RSCALE and
 * SKIP are those of RFC 7529, for the Gregorian calendar. Every problem found is given, each with
 * its place in `text`; codes and parameters are those of `RRULE_CODES`.
 */
export function parseRrule(text: string): Result<Rrule> {
  if (text.length > LONGEST)
    return { ok: false, problems: [problem("", "rrule-too-long", { limit: LONGEST })] };
  const problems: Problem[] = [];
  const report = reporter(problems);
  const parts = byName(readParts(text, report), report);
  const numbers = (name: string, least: number, most: number) =>
    readNumbers(parts.get(name), least, most, report);

  const rule: Rrule = {
    freq: readFrequency(parts.get("FREQ"), report),
    interval: readOne(parts.get("INTERVAL"), MOST_INTERVAL, report) ?? 1,
    count: readOne(parts.get("COUNT"), MOST_COUNT, report),
    until: readUntil(parts.get("UNTIL"), report),
    wkst: WEEKDAYS.indexOf(readWord(parts.get("WKST"), WEEKDAYS, "MO", report)) + 1,
    byMonth: numbers("BYMONTH", 1, 12),
    byWeekNo: numbers("BYWEEKNO", -53, 53),
    byYearDay: numbers("BYYEARDAY", -366, 366),
    byMonthDay: numbers("BYMONTHDAY", -31, 31),
    byDay: readWeekdays(parts.get("BYDAY"), report),
    bySetPos: numbers("BYSETPOS", -366, 366),
    skip: readSkip(parts, report),
  };
  checkTogether(parts, rule, report);
  return problems.length === 0 ? { ok: true, value: rule } : { ok: false, problems };
}
