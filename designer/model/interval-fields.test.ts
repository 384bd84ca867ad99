import { civilDate, formatCivilDate } from "@roundbook/schemas";
import { expect, test } from "vitest";
import {
  definitionOf,
  EMPTY_INTERVAL,
  isMargin,
  nextWindows,
  ruleOf,
  toIntervalFields,
} from "./interval-fields.ts";

const fields = {
  ...EMPTY_INTERVAL,
  title: "Ladder, formal inspection",
  assetType: "ladder",
  checklist: "00000000-0000-7000-8000-000000000001",
  basis: "own practice",
};

test("an interval goes into its form and comes back the same", () => {
  for (const change of [
    { early: "14", late: "7" },
    { every: "1", unit: "Y" as const },
    { kind: "by-result" as const, score: "building", early: "30" },
  ]) {
    const definition = definitionOf({ ...fields, ...change });
    expect(definition).not.toBeNull();
    if (definition) expect(definitionOf(toIntervalFields(definition))).toEqual(definition);
  }
});

test("a margin in months and an interval in years and months are not lost in the form", () => {
  const rule = { kind: "from-last-done", every: "P1Y6M", late: "P1M" } as const;
  const made = toIntervalFields({ ...fields, rule });
  expect(made).toMatchObject({ every: "18", unit: "M", late: "1 month" });
  expect(ruleOf(made)).toEqual({ kind: "from-last-done", every: "P18M", late: "P1M" });
});

test("a margin that cannot be read is never taken for none", () => {
  for (const late of ["soon", "-3", "1.5", "at once"]) {
    expect(isMargin(late)).toBe(false);
    expect(ruleOf({ ...fields, late })).toBeNull();
  }
  expect(ruleOf({ ...fields, late: "2 weeks" })).toMatchObject({ late: "P2W" });
});

test("without a whole number of months there is no rule", () => {
  for (const every of ["", "0", "six", "1.5", "-3"])
    expect(ruleOf({ ...fields, every })).toBeNull();
});

test("the preview counts each date from the day before it was done", () => {
  const windows = nextWindows({ kind: "from-last-done", every: "P6M" }, civilDate(2026, 10, 31), 3);
  expect(windows.map(({ due }) => formatCivilDate(due))).toEqual([
    "2027-04-30",
    "2027-10-30",
    "2028-04-30",
  ]);
});

test("a rule that the form cannot write is kept whole", () => {
  for (const rule of [
    { kind: "each-period", period: "month" },
    { kind: "spacing", min: "P20D", max: "P40D" },
    { kind: "anniversary", every: "P12M", within: "P2M", afterLate: "keep" },
    { kind: "from-last-done", every: "P6M", neverAfter: "P7M" },
  ] as const) {
    const { title, assetType, checklist, basis } = fields;
    const definition = { title, assetType, checklist, rule, basis };
    expect(definitionOf(toIntervalFields(definition))).toEqual(definition);
  }
});

test("the preview of an anniversary counts from its anchor", () => {
  const windows = nextWindows(
    { kind: "anniversary", every: "P1M", within: "P1W", afterLate: "restart" },
    civilDate(2026, 1, 31),
    2,
  );
  expect(windows.map(({ due }) => formatCivilDate(due))).toEqual(["2026-02-28", "2026-03-31"]);
});
