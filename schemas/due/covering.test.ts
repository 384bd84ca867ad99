import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CivilDate } from "../shared/ids.ts";
import { day, doneOn, REGISTERED } from "../testing/due-records.ts";
import { formatCivilDate } from "./civil.ts";
import { computeWindow } from "./compute-window.ts";
import { type CoveringCheck, coveredBy, coverProblems } from "./covering.ts";

const MONTHLY: CoveringCheck = {
  title: "Monthly look",
  rule: { kind: "from-last-done", every: "P1M", early: "P7D", late: "P7D" },
  points: { gauge: { $ref: "check" }, pin: { $ref: "check" } },
};
const YEARLY: CoveringCheck = {
  title: "Yearly service",
  rule: { kind: "from-last-done", every: "P1Y" },
  points: { gauge: { $ref: "check" }, pin: { $ref: "check" }, weight: { $ref: "reading" } },
};
const codes = (longer: CoveringCheck, shorter: CoveringCheck) =>
  coverProblems(longer, shorter).map(({ code }) => code);
const cover = (longer: readonly string[], shorter: readonly string[]) =>
  coveredBy(
    YEARLY,
    MONTHLY,
    { longer: longer.map(doneOn), shorter: shorter.map(doneOn) },
    REGISTERED,
  );
const days = (longer: readonly string[], shorter: readonly string[]) =>
  cover(longer, shorter).covered.map(({ on }) => formatCivilDate(on));

describe("a longer check covers a shorter one", () => {
  test("only when it asks every point of it, in the same way", () => {
    expect(codes(YEARLY, MONTHLY)).toEqual([]);
    const { gauge, weight } = YEARLY.points;
    expect(coverProblems({ ...YEARLY, points: { gauge, weight } }, MONTHLY)).toEqual([
      { pointer: "", code: "covers-lacks-points", params: { points: ["pin"] } },
    ]);
    const other = { ...YEARLY.points, pin: { $ref: "reading" } };
    expect(codes({ ...YEARLY, points: other }, MONTHLY)).toEqual(["covers-lacks-points"]);
    expect(codes(YEARLY, { ...MONTHLY, points: { constructor: {} } })).toEqual([
      "covers-lacks-points",
    ]);
  });

  test("never the reverse, nor one at equal intervals, nor by a result not known yet", () => {
    expect(codes({ ...MONTHLY, points: YEARLY.points }, { ...YEARLY, points: {} })).toEqual([
      "covers-not-longer",
    ]);
    expect(codes(MONTHLY, MONTHLY)).toEqual(["covers-not-longer"]);
    const byResult: CoveringCheck = { ...YEARLY, rule: { kind: "by-result", score: "score" } };
    expect(codes(byResult, MONTHLY)).toEqual(["covers-not-longer"]);
    expect(codes(YEARLY, byResult)).toContain("covers-not-longer");
  });

  // The monthly of 10 March opens on 3 April, is due on the 10th and closes on the 17th.
  test.each([
    ["2026-04-02", []],
    ["2026-04-03", ["2026-04-03"]],
    ["2026-04-17", ["2026-04-17"]],
    ["2026-04-18", []],
  ])("only inside its window: %s", (on, covered) => {
    expect(days([on], ["2026-03-10"])).toEqual(covered);
  });

  test("not before the shorter one was ever done itself", () => {
    expect(days(["2026-04-10"], [])).toEqual([]);
  });

  test("by inspections that count, and by no date from old papers", () => {
    const paper = { ...doneOn("2026-04-10"), counts: false, broughtForward: true };
    const half = { ...doneOn("2026-04-10"), counts: false };
    for (const record of [paper, half]) {
      const records = { longer: [record], shorter: [doneOn("2026-03-10")] };
      expect(coveredBy(YEARLY, MONTHLY, records, REGISTERED).covered).toEqual([]);
    }
  });
});

test("what was covered moves the date and says by which check", () => {
  const { done } = cover(["2026-04-09"], ["2026-03-10"]);
  const window = computeWindow(MONTHLY.rule, { done, registered: REGISTERED });
  expect(formatCivilDate(window.due)).toBe("2026-05-09");
  expect(window.why.moved).toEqual([
    { code: "covered-by-longer", params: { title: "Yearly service", date: "2026-04-09" } },
  ]);
});

test("one cover opens the window of the next; the order of arrival changes nothing", () => {
  const longer = ["2026-05-10", "2026-04-10"];
  expect(days(longer, ["2026-03-10"])).toEqual(["2026-04-10", "2026-05-10"]);
  const from = day("2026-01-01");
  const some = fc.uniqueArray(
    fc.integer({ min: from, max: from + 200 }) as fc.Arbitrary<CivilDate>,
    { maxLength: 6 },
  );
  fc.assert(
    fc.property(some, some, (one, other) => {
      const made = (flip: boolean) => {
        const turn = <T>(list: readonly T[]) => (flip ? [...list].reverse() : [...list]);
        const records = { longer: turn(one.map(doneOn)), shorter: turn(other.map(doneOn)) };
        const { done, covered } = coveredBy(YEARLY, MONTHLY, records, REGISTERED);
        return { covered, window: computeWindow(MONTHLY.rule, { done, registered: REGISTERED }) };
      };
      expect(made(true)).toEqual(made(false));
    }),
  );
});
