import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { formatCivilDate, parseCivilDate } from "../../schemas/due/civil.ts";
import { occurrences } from "../../schemas/due/rrule/occurrences.ts";
import { parseRrule } from "../../schemas/due/rrule/parse-rrule.ts";
import { realDataPath } from "./folder.ts";

/** Recurrence rules with their dates: RFC 5545's own examples and those of a test file. */
const CORPUS = realDataPath("..", "checkvalues", "06b-rrule-corpus.json");

interface Entry {
  readonly id: string;
  readonly source: string;
  readonly input: { readonly dtstart: string; readonly rrule: string };
  readonly expected: readonly string[];
  readonly agreement: Readonly<Record<string, boolean>>;
  readonly use: string;
}

/** Where we give other dates than the collection prints: the rule's words that we follow, and ours. */
const OURS: Readonly<Record<string, { readonly why: string; readonly dates: string }>> = {
  "rr-076": {
    why: "BYMONTHDAY expands a year, and no part or example limits it to DTSTART's month",
    dates: "2024-02-29 2024-03-29 2024-04-29",
  },
  "rr-077": {
    why: "as rr-076",
    dates: "2024-02-01 2024-02-29 2024-03-03 2024-03-31",
  },
  "rr-142": {
    why: "INTERVAL counts calendar years: the week's days of 2015 lie in a year between",
    dates: "2010-01-02 2016-01-02",
  },
  "rr-143": {
    why: "as rr-142, and so do both libraries, who agree on the first date and go on",
    dates: "2010-01-02 2015-12-29",
  },
  "rr-145": {
    why: "as rr-142",
    dates: "2024-12-31 2027-01-04 2027-01-05 2030-01-01 2030-12-30 2030-12-31",
  },
};

const read = (path: string): { readonly entries: readonly Entry[] } =>
  existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : { entries: [] };

const entries = read(CORPUS).entries;
const isSubDaily = ({ input }: Entry) => /HOUR|MINUTE|SECOND/.test(input.rrule);
const isRfc = ({ source }: Entry) => source.startsWith("RFC 5545");
const isDisputed = ({ use }: Entry) => use.startsWith("disputed");
const named = (list: readonly Entry[]) =>
  list.map((entry) => [entry.id, entry.input.rrule, entry] as const);

const iso = (text: string) => text.replace(/^(\d{4})-?(\d\d)-?(\d\d).*$/, "$1-$2-$3");

/** A DTSTART at midnight stands for a day: RFC 5545 then wants a day as UNTIL too. */
const asDays = ({ dtstart, rrule }: Entry["input"]) =>
  dtstart.includes("T000000") ? rrule.replace(/(UNTIL=\d{8})T\d{6}Z?/, "$1") : rrule;

function dates({ id, input, expected }: Entry): string[] {
  const rule = parseRrule(asDays(input));
  const dtstart = parseCivilDate(iso(input.dtstart));
  if (!rule.ok || dtstart === undefined) throw new Error(JSON.stringify(rule));
  const found: string[] = [];
  for (const day of occurrences(rule.value, dtstart)) {
    found.push(formatCivilDate(day));
    // One too many would show.
    if (found.length > Math.max(expected.length, OURS[id]?.dates.split(" ").length ?? 0)) break;
  }
  return found;
}

const days = (entry: Entry) => OURS[entry.id]?.dates.split(" ") ?? entry.expected.map(iso);

describe.skipIf(entries.length === 0)("recurrence rules with published dates", () => {
  const rfc = entries.filter((entry) => isRfc(entry) && !isSubDaily(entry));
  const others = entries.filter(
    (entry) => !isRfc(entry) && !isSubDaily(entry) && !isDisputed(entry),
  );
  const disputed = entries.filter((entry) => isDisputed(entry) && !isSubDaily(entry));
  const subDaily = entries.filter(isSubDaily);

  test("all of the collection is sorted", () => {
    expect({
      rfc: rfc.length,
      others: others.length,
      disputed: disputed.length,
      subDaily: subDaily.length,
    }).toEqual({ rfc: 37, others: 57, disputed: 19, subDaily: 32 });
    expect(subDaily.filter(isRfc).map(({ id }) => id)).toEqual([
      "rr-045",
      "rr-048",
      "rr-049",
      "rr-050",
    ]);
  });

  test.each(named(rfc))("%s of RFC 5545 §3.8.5.3: %s", (_id, _rule, entry) => {
    expect(Object.values(entry.agreement).filter(Boolean).length).toBeGreaterThanOrEqual(2);
    expect(dates(entry)).toEqual(days(entry));
  });

  test.each(named(others))("%s, on which others agree: %s", (_id, _rule, entry) => {
    expect(dates(entry)).toEqual(days(entry));
  });

  test.each(named(subDaily))("%s gives times of day and is refused: %s", (_id, _rule, entry) => {
    const result = parseRrule(entry.input.rrule);
    const codes = result.ok ? [] : result.problems.map(({ code }) => code);
    expect(codes).toContain("rrule-sub-daily");
  });

  test.each(named(disputed))("%s, disputed: %s", (_id, _rule, entry) => {
    expect(dates(entry)).toEqual(days(entry));
  });
});
