import { expect, test } from "vitest";
import { ruleOfOwn } from "./asset-rule.tsx";

test("a rule of its own has the margins that are written and the interval's longest time", () => {
  expect(
    ruleOfOwn(
      { kind: "from-last-done", every: "P6M", early: "P1M", late: "P1M", neverAfter: "P1Y" },
      { every: "P2W", before: "P3D" },
    ),
  ).toEqual({ kind: "from-last-done", every: "P2W", early: "P3D", neverAfter: "P1Y" });
});

test("a day that is kept stays one that is kept", () => {
  expect(
    ruleOfOwn(
      { kind: "anniversary", every: "P1Y", within: "P1M", late: "P7D", afterLate: "keep" },
      { every: "P6M", before: "P2W" },
    ),
  ).toEqual({ kind: "anniversary", every: "P6M", within: "P2W", afterLate: "keep" });
});

test("of a kind without a length it counts from when it was last done, by the same policies", () => {
  expect(
    ruleOfOwn({ kind: "each-period", period: "month", whenClosed: "excused" }, { every: "P2W" }),
  ).toEqual({ kind: "from-last-done", every: "P2W", whenClosed: "excused" });
});
