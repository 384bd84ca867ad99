import { type CivilDate, parseCivilDate } from "@roundbook/schemas";
import { describe, expect, it } from "vitest";
import { dueWords, longDay, nearDay, shortDay } from "./dates.ts";
import { durationWords } from "./duration-words.ts";
import { english } from "./messages.tsx";

const day = (iso: string): CivilDate => {
  const date = parseCivilDate(iso);
  if (date === undefined) throw new Error(`${iso} is no day`);
  return date;
};
const today = day("2026-10-13");
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("a date in words", () => {
  it("has its weekday when it is written out", () => {
    expect(plain(longDay(today))).toBe("Tuesday 13 October");
    expect(plain(longDay(day("2027-01-13"), today))).toBe("Wednesday 13 January 2027");
  });

  it("is near by its weekday within a month, else by its month, with a year that is not the reader's", () => {
    expect(plain(nearDay(day("2026-10-30"), today))).toBe("Fri 30");
    expect(plain(nearDay(day("2026-11-30"), today))).toBe("30 Nov");
    expect(plain(shortDay(day("2025-04-30"), today))).toBe("30 Apr 2025");
  });
});

describe("a due window in words", () => {
  const window = (earliest: string, latest: string) =>
    plain(dueWords({ earliest: day(earliest), latest: day(latest) }, today));
  it.each([
    ["2027-01-04", "2027-01-24", "from 4 Jan 2027"],
    ["2026-10-01", "2026-10-31", "by Sat 31"],
    ["2026-10-13", "2026-11-30", "by 30 Nov"],
    ["2026-10-01", "2026-10-13", "today"],
    ["2026-10-01", "2026-10-12", "1 day over"],
    ["2026-10-01", "2026-10-09", "4 days over"],
  ])("%s to %s is “%s” on 13 October", (earliest, latest, words) => {
    expect(window(earliest, latest)).toBe(words);
  });
});

describe("a duration in words", () => {
  it.each([
    ["P6M", "6 months"],
    ["P1Y6M", "1 year 6 months"],
    ["P14D", "14 days"],
    ["at-once", "at once"],
  ])("%s is “%s”", (duration, words) => {
    expect(durationWords(english.t, duration)).toBe(words);
  });
});
