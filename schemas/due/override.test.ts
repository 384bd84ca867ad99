import { describe, expect, test } from "vitest";
import { day, doneOn } from "../testing/due-records.ts";
import { formatCivilDate } from "./civil.ts";
import { computeWindow, statusOn } from "./compute-window.ts";
import type { DueFacts, RuleOverride } from "./facts.ts";
import type { IntervalRule } from "./rule-schema.ts";

const YEARLY: IntervalRule = { kind: "from-last-done", every: "P12M", neverAfter: "P14M" };
const every = (duration: string, until: string | null, more: Partial<IntervalRule> = {}) =>
  ({
    rule: { kind: "from-last-done", every: duration, ...more } as IntervalRule,
    reason: "in a wet room",
    until: until === null ? null : day(until),
  }) satisfies RuleOverride;
const windowOf = (
  override: RuleOverride,
  rule: IntervalRule = YEARLY,
  more: Partial<DueFacts> = {},
) =>
  computeWindow(rule, {
    done: [doneOn("2026-03-14")],
    registered: day("2026-01-01"),
    override,
    ...more,
  });
const dueOf = (override: RuleOverride, rule: IntervalRule = YEARLY) => {
  const { due, latest, why } = windowOf(override, rule);
  return [formatCivilDate(due), formatCivilDate(latest), why.moved?.map(({ code }) => code)];
};

describe("a rule of one asset's own", () => {
  test("decides for good, or as long as its date lies in its time, and says why", () => {
    expect(dueOf(every("P3M", null))).toEqual(["2026-06-14", "2026-06-14", ["override"]]);
    expect(dueOf(every("P3M", "2026-06-14"))).toEqual(["2026-06-14", "2026-06-14", ["override"]]);
    expect(windowOf(every("P3M", "2026-12-31")).why.moved).toEqual([
      { code: "override", params: { reason: "in a wet room", until: "2026-12-31" } },
    ]);
  });

  test("of plain time takes away no block and no trigger of the interval", () => {
    const repaired: Partial<DueFacts> = {
      events: [{ kind: "repaired", entry: "repair", on: day("2026-11-20"), at: null }],
    };
    const onRepair: IntervalRule = {
      kind: "on-event",
      after: ["repaired"],
      within: "P7D",
      blocks: true,
    };
    const blocked = windowOf(every("P3M", null), onRepair, repaired);
    expect(statusOn(blocked, day("2026-11-25"))).toBe("blocked");
    expect(formatCivilDate(blocked.due)).toBe("2026-11-27");

    const byResult: IntervalRule = { kind: "by-result", score: "state" };
    const atOnce = [{ ...doneOn("2026-03-14"), next: { state: "at-once" } }];
    expect(formatCivilDate(windowOf(every("P3M", null), byResult, { done: atOnce }).due)).toBe(
      "2026-03-14",
    );
    const byRisk: IntervalRule = {
      kind: "by-risk",
      table: {
        policy: "unique",
        inputs: ["asset.place"],
        // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
        rules: [{ when: ["wet"], then: "P1M" }],
      },
      worse: { place: ["dry", "wet"] },
    };
    const unknown = windowOf(every("P3M", null), byRisk);
    expect(statusOn(unknown, day("2026-04-01"))).toBe("undecided");
    const wet = windowOf(every("P3M", null), byRisk, { particulars: { place: "wet" } });
    expect(formatCivilDate(wet.due)).toBe("2026-04-14");
  });

  test("adds a date where the interval's trigger asks for none, or later", () => {
    const onRepair: IntervalRule = { kind: "on-event", after: ["repaired"], within: "P7D" };
    expect(dueOf(every("P3M", null), onRepair)[0]).toBe("2026-06-14");
    const byResult: IntervalRule = { kind: "by-result", score: "state" };
    const inAYear = [{ ...doneOn("2026-03-14"), next: { state: "P1Y" } }];
    expect(formatCivilDate(windowOf(every("P3M", null), byResult, { done: inAYear }).due)).toBe(
      "2026-06-14",
    );
  });

  test("whose date lies beyond its time gives way to the interval's", () => {
    expect(dueOf(every("P13M", "2026-06-13"))).toEqual(["2027-03-14", "2027-03-14", undefined]);
    expect(dueOf(every("P3M", "2026-06-13"))[0]).toBe("2027-03-14");
  });

  test("that gave more time than the interval ends on its last day, not before", () => {
    expect(dueOf(every("P13M", "2027-03-31"))).toEqual([
      "2027-03-31",
      "2027-03-31",
      ["override-over"],
    ]);
  });

  test("once overdue stays overdue when its time is over", () => {
    const window = windowOf(every("P3M", "2026-12-31"));
    expect(statusOn(window, day("2026-06-15"))).toBe("overdue");
    expect(statusOn(window, day("2027-01-01"))).toBe("overdue");
  });

  test("never passes the longest time of the interval it stands for, nor its own", () => {
    expect(dueOf(every("P2Y", null, { late: "P1M" }))).toEqual([
      "2027-05-14",
      "2027-05-14",
      ["never-after", "override"],
    ]);
    expect(dueOf(every("P2Y", null, { neverAfter: "P1M" }))[0]).toBe("2026-04-14");
    expect(dueOf(every("P2Y", "2028-12-31"))[0]).toBe("2027-05-14");
  });

  test("the stricter of two longest times depends on the day: P1M and P30D", () => {
    const rule: IntervalRule = { ...YEARLY, every: "P1M", neverAfter: "P1M" } as IntervalRule;
    const own = every("P1Y", null, { neverAfter: "P30D" });
    const from = (on: string) => formatCivilDate(windowOf(own, rule, { done: [doneOn(on)] }).due);
    expect(from("2026-03-14")).toBe("2026-04-13");
    expect(from("2026-02-14")).toBe("2026-03-14");
  });

  test("may be of another kind, and what it lacks is undecided", () => {
    const own: RuleOverride = {
      rule: { kind: "on-usage", point: "hours", every: 500, unit: "h" },
      reason: "by its hours",
      until: null,
    };
    const window = windowOf(own);
    expect(statusOn(window, day("2026-03-15"))).toBe("undecided");
    expect(window.why.code).toBe("needs-meter");
  });

  test("of the same kind holds back what the interval would block until its last day", () => {
    const rule: IntervalRule = {
      kind: "on-event",
      after: ["repaired"],
      within: "P0D",
      blocks: true,
    };
    const events = [{ kind: "repaired", entry: "r", on: day("2026-04-01"), at: null }] as const;
    const later: RuleOverride = {
      ...every("P3M", "2026-06-01"),
      rule: { ...rule, within: "P3M" },
    };
    const window = windowOf(later, rule, { events });
    expect(formatCivilDate(window.due)).toBe("2026-06-01");
    expect(["2026-05-31", "2026-06-01"].map((on) => statusOn(window, day(on)))).toEqual([
      "early",
      "blocked",
    ]);
  });
});

test("by use reads its own meter, and leaves the interval's to the interval", () => {
  const hours = (point: string): IntervalRule => ({
    kind: "on-usage",
    point,
    every: 100,
    unit: "h",
    orAfter: "P5Y",
  });
  const read = (on: string, value: number) => ({
    entry: on === "2026-03-02" ? doneOn(on).entry : on,
    on: day(on),
    at: null,
    value,
    unit: "h",
  });
  const facts: DueFacts = {
    done: [doneOn("2026-03-02")],
    registered: day("2026-01-01"),
    meter: [read("2026-03-02", 0), read("2026-04-21", 120)],
  };
  const override: RuleOverride = {
    rule: hours("two"),
    reason: "another engine",
    until: day("2026-04-30"),
    meter: [read("2026-03-02", 0), read("2026-04-21", 1)],
  };
  expect(formatCivilDate(computeWindow(hours("one"), facts).due)).toBe("2026-04-21");
  const both = computeWindow(hours("one"), { ...facts, override });
  // Beyond its last day the override gives way to the interval's own, which is not before that day.
  expect(formatCivilDate(both.due)).toBe("2026-04-30");
});

test("beside a trigger the sooner last day counts too", () => {
  const rule: IntervalRule = { kind: "by-result", score: "state", late: "P3M" };
  const done = [{ ...doneOn("2026-01-01"), next: { state: "P1M" } }];
  const own = every("P32D", null);
  const window = computeWindow(rule, { done, registered: day("2025-12-01"), override: own });
  expect([window.due, window.latest].map(formatCivilDate)).toEqual(["2026-02-01", "2026-02-02"]);
});
