import type { ChecklistRow, HistoryEntry } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { readingWords, seriesOf } from "./life-readings.ts";

const list = {
  id: "list",
  document: {
    properties: {
      flow: { $ref: "#/$defs/reading", title: "Flow", quantity: { unit: "Cel" } },
      tight: { $ref: "#/$defs/check", title: "Tight" },
    },
  },
} as unknown as ChecklistRow;
const row = (civilDate: string, value: number, unit = "Cel", more: object = {}) =>
  ({
    entry: {
      id: civilDate,
      kind: "inspection",
      civilDate,
      happenedAt: null,
      body: {
        checklist: { id: "list", issue: 2 },
        answers: { flow: { value, unit, ...more }, tight: true },
      },
    },
    leaf: {
      judgement: {
        points: {
          flow: {
            verdict: value < 60 ? "fail" : "pass",
            limits: [
              { severity: "fail", kind: "min", bound: 60 },
              { severity: "advisory", kind: "min", bound: 62 },
            ],
          },
        },
      },
    },
  }) as unknown as HistoryEntry;
const flow = (rows: HistoryEntry[]) => seriesOf(rows, [list])[0]?.readings;

test("readings stand in the order of their days, with the limit they were judged by", () => {
  expect(flow([row("2026-03-01", 61), row("2026-01-01", 58)])).toEqual([
    {
      entry: "2026-01-01",
      day: "2026-01-01",
      value: 58,
      outside: true,
      min: 60,
      max: null,
      issue: 2,
    },
    {
      entry: "2026-03-01",
      day: "2026-03-01",
      value: 61,
      outside: false,
      min: 60,
      max: null,
      issue: 2,
    },
  ]);
});

test("a reading in another unit is told in the one of its point; one that cannot be is left out", () => {
  const rows = [
    row("2026-01-01", 64),
    row("2026-02-01", 140, "[degF]"),
    row("2026-03-01", 3, "Ohm"),
  ];
  expect(flow(rows)?.map(({ value }) => value)).toEqual([64, 60]);
});

test("what is known only to lie below is no figure of its own", () => {
  const rows = [row("2026-01-01", 64), row("2026-02-01", 61, "Cel", { comparator: "<" })];
  expect(flow(rows)?.map(({ open }) => open)).toEqual([undefined, "below"]);
});

test("what was read once is no plot", () => {
  expect(seriesOf([row("2026-01-01", 64)], [list])).toEqual([]);
});

test("an entry says what was read and by which limit it was judged", () => {
  expect(readingWords(row("2026-01-01", 61.5), [list])).toBe("Flow 61.5\u00a0°C (min 60)");
  expect(readingWords(row("2026-01-01", 61.5), [])).toBeUndefined();
});
