import { expect, test } from "vitest";
import { ruleOfOwn } from "./asset-rule.tsx";

test("a rule of its own keeps what else the interval says, where that has a length", () => {
  expect(
    ruleOfOwn({ kind: "from-last-done", every: "P6M", early: "P1M", neverAfter: "P1Y" }, "P3M"),
  ).toEqual({ kind: "from-last-done", every: "P3M", early: "P1M", neverAfter: "P1Y" });
});

test("of a kind without a length it counts from when it was last done, by the same policies", () => {
  expect(ruleOfOwn({ kind: "each-period", period: "month", whenClosed: "excused" }, "P2W")).toEqual(
    { kind: "from-last-done", every: "P2W", whenClosed: "excused" },
  );
});
