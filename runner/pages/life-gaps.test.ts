import {
  calendarOf,
  civilDate,
  type DoneRecord,
  formatCivilDate,
  type HistoryEntry,
  type IntervalRow,
  type IntervalRule,
} from "@roundbook/schemas";
import { expect, test } from "vitest";
import { gapsOf, recordsOf } from "./life-gaps.ts";

const interval = (rule: IntervalRule): IntervalRow => ({
  id: "i",
  definition: { title: "Temperatures", assetType: "heater", checklist: "list", rule },
});
const done = (...days: readonly (readonly [number, number, number])[]): DoneRecord[] =>
  days.map((day, at) => ({
    entry: `e${at}`,
    on: civilDate(...day),
    at: null,
    counts: true,
    next: {},
  }));
const registered = civilDate(2023, 10, 1);
const today = civilDate(2026, 1, 10);
const monthly: IntervalRule = { kind: "each-period", period: "month" };
const told = (rule: IntervalRule, records: DoneRecord[], facts = {}) =>
  gapsOf(interval(rule), records, { registered, ...facts }, today).map((gap) => ({
    ...gap,
    from: formatCivilDate(gap.from),
    to: gap.to === null ? null : formatCivilDate(gap.to),
    missed: gap.missed.map(formatCivilDate),
  }));

test("a month without its check is a gap between the entries around it", () => {
  expect(told(monthly, done([2025, 10, 13], [2025, 12, 10]))).toEqual([
    {
      interval: "i",
      title: "Temperatures",
      monthly: true,
      after: "e0",
      from: "2025-10-14",
      to: "2025-12-09",
      missed: ["2025-11-30"],
    },
  ]);
});

test("every month that passed is counted, and what is done in time leaves no gap", () => {
  expect(told(monthly, done([2025, 8, 13], [2025, 12, 10]))[0]?.missed).toEqual([
    "2025-09-30",
    "2025-10-31",
    "2025-11-30",
  ]);
  expect(told(monthly, done([2025, 11, 30], [2025, 12, 1]))).toEqual([]);
});

test("what is late to this day has no end yet", () => {
  const [gap] = told({ kind: "from-last-done", every: "P6M" }, done([2025, 1, 31]));
  expect(gap).toMatchObject({ to: null, missed: ["2025-07-31"] });
});

test("what was excused while closed says so and was not missed", () => {
  const calendar = calendarOf({
    closures: [{ from: "2024-02-01", to: "2024-02-29", reason: "Pier works" }],
  });
  const rule: IntervalRule = {
    kind: "from-last-done",
    every: "P1M",
    late: "P7D",
    whenClosed: "excused",
  };
  const records = done([2024, 1, 10], [2024, 3, 1], [2024, 4, 1]);
  const [gap] = told(rule, records, { calendar });
  expect(gap).toMatchObject({ missed: [], excused: "Pier works", from: "2024-01-11" });
});

test("of a rule whose grounds are not known afterwards nothing is said", () => {
  const rule: IntervalRule = { kind: "on-event", after: ["repaired"], within: "P0D" };
  expect(told(rule, done([2020, 1, 1]))).toEqual([]);
  const override = { rule: monthly, reason: "", until: null };
  expect(told(monthly, done([2025, 1, 1]), { override })).toEqual([]);
});

test("a longer check that stood for this one is a record of it; an incomplete one is none", () => {
  const row = (id: string, complete: boolean, more: Partial<HistoryEntry> = {}) =>
    ({
      entry: {
        id,
        kind: "inspection",
        civilDate: "2025-01-01",
        happenedAt: null,
        body: { checklist: { id: "other" }, judgement: { complete, overall: "pass", scores: {} } },
      },
      leaf: {},
      ...more,
    }) as unknown as HistoryEntry;
  const rows = [
    row("a", true, { covered: ["Temperatures"] }),
    row("b", true),
    row("c", false, { covered: ["Temperatures"] }),
  ];
  expect(recordsOf(rows, interval(monthly)).map(({ entry }) => entry)).toEqual(["a"]);
});
