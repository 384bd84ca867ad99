import type { IntervalRule } from "@roundbook/schemas";
import { expect, it } from "vitest";
import { readDue } from "./read-due.ts";
import { sealEntries } from "./seal-entries.ts";
import { setInterval } from "./set-interval.ts";
import { GOOD, testEstate } from "./testing/estate.ts";

async function dueAfter(rule: IntervalRule, ...days: readonly string[]) {
  const { ctx, session, ids, signed, registered, inspection, newId } = await testEstate();
  const asset = newId();
  await sealEntries(ctx, session, [signed(registered(asset, "D-1", "2024-02-10"))]);
  for (const day of days)
    await sealEntries(ctx, session, [signed(await inspection(asset, GOOD, day))]);
  const definition = { title: "Yearly", assetType: "door", checklist: ids.checklist, rule };
  await setInterval(ctx, session, definition, ids.interval);
  const { rows } = await readDue(ctx, { on: "2026-09-01", limit: 10 });
  return rows.map(({ due, lastDone, why }) => [due, lastDone, why.code, why.moved?.[0]?.code]);
}

const YEARLY: IntervalRule = {
  kind: "anniversary",
  every: "P12M",
  within: "P2M",
  afterLate: "restart",
};

it("an anniversary is counted from all that was done, in whatever order it was sent", async () => {
  const days = ["2024-02-10", "2025-01-05", "2025-12-20"];
  const expected = [["2027-02-10", "2025-12-20", "anniversary-kept", undefined]];
  expect(await dueAfter(YEARLY, ...days)).toEqual(expected);
  expect(await dueAfter(YEARLY, ...days.toReversed())).toEqual(expected);
});

it("the longest time the law allows goes before a kept anniversary", async () => {
  const rule = { ...YEARLY, neverAfter: "P13M" };
  expect(await dueAfter(rule, "2024-02-10", "2025-01-05", "2025-12-20")).toEqual([
    ["2027-01-20", "2025-12-20", "anniversary-kept", "never-after"],
  ]);
});

it("once in each half of the year, whatever the day", async () => {
  expect(await dueAfter({ kind: "each-period", period: "half-year" }, "2026-01-02")).toEqual([
    ["2026-12-31", "2026-01-02", "each-half-year", undefined],
  ]);
});
