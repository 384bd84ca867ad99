import {
  civilDate,
  formatCivilDate,
  type IntervalRule,
  type Judgement,
  type SiteBundle,
} from "@roundbook/schemas";
import { expect, test } from "vitest";
import { nextWindows } from "./fill-next-due.tsx";

const RULES: readonly IntervalRule[] = [
  { kind: "from-last-done", every: "P6M" },
  { kind: "each-period", period: "quarter" },
  { kind: "anniversary", every: "P12M", within: "P2M", afterLate: "restart" },
  { kind: "spacing", min: "P20D", max: "P40D" },
];
const bundle = {
  intervals: RULES.map((rule, n) => ({
    id: `${n}`,
    definition: { title: `${n}`, assetType: "door", checklist: "c", rule },
  })),
} as unknown as SiteBundle;
const next = (complete: boolean) =>
  nextWindows(bundle, {
    assetType: "door",
    checklist: "c",
    judgement: { complete, overall: "pass", scores: {} } as unknown as Judgement,
    today: civilDate(2026, 10, 13),
    at: 0,
  }).map(({ window }) =>
    window === null || window === "later" ? window : formatCivilDate(window.due),
  );

test("no date is promised that only the whole history tells", () => {
  expect(next(true)).toEqual(["2027-04-13", "2027-03-31", "later", "later"]);
});

test("an inspection that is not complete moves no date of any interval", () => {
  expect(next(false)).toEqual([null, null, null, null]);
});
