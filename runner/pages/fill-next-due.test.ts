import {
  type AssetRow,
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
  { kind: "on-usage", point: "hours", every: 100, unit: "h" },
  { kind: "on-event", after: ["repaired"], within: "P0D" },
];
const asset = {
  id: "a",
  assetType: "door",
  registeredOn: "2026-01-01",
  particulars: { wing: "north" },
} as unknown as AssetRow;
const bundle = {
  calendar: { closures: [{ from: "2027-04-10", to: "2027-04-20", reason: "Break" }] },
  overrides: [],
  intervals: RULES.map((rule, n) => ({
    id: `${n}`,
    definition: { title: `${n}`, assetType: "door", checklist: "c", rule },
  })),
} as unknown as SiteBundle;
const next = (complete: boolean, of = bundle) =>
  nextWindows(of, {
    asset,
    checklist: "c",
    judgement: { complete, overall: "pass", scores: {} } as unknown as Judgement,
    today: civilDate(2026, 10, 13),
    at: 0,
  }).map(({ window }) =>
    window === null || window === "later" ? window : formatCivilDate(window.due),
  );

test("no date is promised that only the whole history tells", () => {
  expect(next(true)).toEqual(["2027-04-09", "2027-03-31", "later", "later", "later", "later"]);
});

test("an inspection that is not complete moves no date of any interval", () => {
  expect(next(false)).toEqual(RULES.map(() => null));
});

test("a rule of the asset's own decides its date, until when it holds", () => {
  const rule: IntervalRule = { kind: "from-last-done", every: "P1M" };
  const own = (until: string | null) => ({
    ...bundle,
    overrides: [{ asset: "a", interval: "0", rule, reason: "Salt", until }],
  });
  expect(next(true, own(null))[0]).toBe("2026-11-13");
  expect(next(true, own("2026-10-20"))[0]).toBe("2027-04-09");
});
