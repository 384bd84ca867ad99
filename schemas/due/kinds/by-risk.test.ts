import { describe, expect, test } from "vitest";
import type { Particulars } from "../../checklist/answer-types.ts";
import { day, doneOn, REGISTERED } from "../../testing/due-records.ts";
import { rule } from "../../testing/rule.ts";
import { formatCivilDate } from "../civil.ts";
import { computeWindow, statusOn } from "../compute-window.ts";
import type { RuleOf } from "../rule-schema.ts";

type Rule = RuleOf<"by-risk">;

/** By its use in days a month: common practice of a local authority for ladders. */
const LADDERS: Rule = {
  kind: "by-risk",
  table: {
    policy: "unique",
    inputs: ["asset.use", "asset.kind"],
    rules: [
      { ...rule([{ min: 4 }, { any: true }], "P3M"), basis: "Used every week" },
      rule([{ min: 1, exclusiveMax: 4 }, { any: true }], "P6M"),
      rule([{ exclusiveMax: 1 }, "ladder"], "P12M"),
      rule([{ exclusiveMax: 1 }, ["ladder", "steps"]], "P9M"),
    ],
  },
  worse: { use: "up", kind: ["ladder", "steps"] },
  late: "P7D",
};
const windowOf = (particulars: Particulars | undefined, done: readonly string[], asked = LADDERS) =>
  computeWindow(asked, {
    done: done.map(doneOn),
    registered: REGISTERED,
    ...(particulars === undefined ? {} : { particulars }),
  });

describe("by risk", () => {
  test("the particulars pick the interval, and the reason is kept", () => {
    const { due, latest, why } = windowOf({ use: 20, kind: "steps" }, ["2026-01-31"]);
    expect([due, latest].map(formatCivilDate)).toEqual(["2026-04-30", "2026-05-07"]);
    expect(why).toEqual({
      code: "by-risk",
      params: {
        every: "P3M",
        factors: ["use: 20", "kind: steps"],
        reason: "Used every week",
        date: "2026-01-31",
        entry: doneOn("2026-01-31").entry,
      },
    });
  });

  test("a text is never taken for the number that it spells", () => {
    expect(windowOf({ use: 20, kind: "steps" }, ["2026-01-31"]).undecided).toBeUndefined();
    expect(windowOf({ use: "20", kind: "steps" }, ["2026-01-31"]).undecided).toBe(true);
  });
});

describe("never silently not due", () => {
  test.each<[string, Particulars | undefined, string, object]>([
    ["nothing known", undefined, "needs-particulars", { names: ["use", "kind"] }],
    ["a factor lacking", { use: 3 }, "needs-particulars", { names: ["kind"] }],
    [
      "no rule fits",
      { use: 0, kind: "tower" },
      "no-risk-rule",
      { factors: ["use: 0", "kind: tower"] },
    ],
    [
      "two rules fit",
      { use: 0, kind: "ladder" },
      "risk-rules-conflict",
      { factors: ["use: 0", "kind: ladder"] },
    ],
  ])("%s: undecided, done or not, and says what it needs", (_, particulars, code, params) => {
    for (const done of [[], ["2026-01-31"]]) {
      const window = windowOf(particulars, done);
      const last = done[0] === undefined ? REGISTERED : day(done[0]);
      expect([window.why.code, window.why.params]).toEqual([code, params]);
      expect([window.due, statusOn(window, day("2026-12-31"))]).toEqual([last, "undecided"]);
    }
  });

  test("nor does a time until it is first due hide it", () => {
    expect(windowOf({}, [], { ...LADDERS, first: "P1Y" }).undecided).toBe(true);
    const known = windowOf({ use: 5, kind: "steps" }, [], { ...LADDERS, first: "P1Y" });
    expect([known.undecided, formatCivilDate(known.due)]).toEqual([undefined, "1971-01-01"]);
  });

  test("an outcome that is no duration is no rule that fits", () => {
    const table = { ...LADDERS.table, rules: [rule([{ any: true }, { any: true }], "often")] };
    const window = windowOf({ use: 5, kind: "steps" }, ["2026-01-31"], { ...LADDERS, table });
    expect(window.why.code).toBe("no-risk-rule");
  });
});
