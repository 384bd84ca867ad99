import { describe, expect, test } from "vitest";
import { judgeOf, judgeOne } from "../../judge/testing/checklists.ts";
import { FUSE, FUSE_VALUES, POLARITY } from "../../starters/electrical-parts.ts";
import { RESIDUAL_CURRENT_DEVICE } from "../../starters/residual-current-device.ts";
import { edgeFaults, judgeReading } from "./edges.ts";
import {
  DELAYED,
  FAST_TEST_CURRENT,
  FUSES,
  GENERAL_TRIP,
  HOLDS_AT_HALF,
  SELECTIVE_FAST,
  SINGLE_TEST,
  STRAIGHT_THROUGH,
} from "./electrical-rcd.ts";

const points = RESIDUAL_CURRENT_DEVICE.checklist.properties;

describe("residual-current devices, BS EN 61008-1", () => {
  test.each(GENERAL_TRIP)(
    "$id: general type trips within $max ms at $multiple times",
    ({ max }) => {
      expect(edgeFaults({ unit: "ms", bound: max, step: 1, limit: { max } })).toEqual([]);
    },
  );

  test.each([
    ["el-100", SELECTIVE_FAST],
    ["el-106", SINGLE_TEST.selective],
  ])("%s: the selective type trips neither too early nor too late", (_, { min, max }) => {
    for (const limit of [{ min }, { max }])
      expect(
        edgeFaults({ unit: "ms", bound: limit.min ?? limit.max ?? 0, step: 1, limit }),
      ).toEqual([]);
    const both = [min - 1, min, max, max + 1].map(
      (value) => judgeReading(value, "ms", [{ min, max }]).verdict,
    );
    expect(both).toEqual(["fail", "pass", "pass", "fail"]);
  });

  test("el-103: a delayed device trips after 200 ms plus half to all of its delay", () => {
    const particulars = { delay: { title: "Set delay", type: "number", unit: "ms" } } as const;
    const edge = { unit: "ms", step: 1, parts: { particulars } };
    const given = { particulars: { delay: DELAYED.delay } };
    const earliest = { min: "200.0 + 0.5 * asset.delay" };
    const latest = { max: "200.0 + asset.delay" };
    expect(edgeFaults({ ...edge, ...given, bound: DELAYED.min, limit: earliest })).toEqual([]);
    expect(edgeFaults({ ...edge, ...given, bound: DELAYED.max, limit: latest })).toEqual([]);
  });

  test(`${HOLDS_AT_HALF.id}: one that trips at half its rated residual current fails`, () => {
    const point = points.half;
    expect(point).toBeDefined();
    if (point === undefined) return;
    expect(judgeOne(point, "ok").verdict).toBe("pass");
    expect(judgeOne(point, "not-ok").verdict).toBe("fail");
    expect(judgeOne(point, undefined).verdict).toBe("undecided");
  });

  test(`${FAST_TEST_CURRENT.id}: 250 mA counts as the fast test of a 30 mA device only`, () => {
    const point = points.current_5x;
    const { particulars } = RESIDUAL_CURRENT_DEVICE.checklist;
    if (point === undefined || particulars === undefined) throw new Error("not in the starter");
    const judge = judgeOf({ particulars, properties: { x: point } });
    const verdict = (x: string, rated_current: number) =>
      judge.judgePoint("x", { particulars: { type: "general", rated_current }, answers: { x } })
        .verdict;
    expect(verdict("250 mA", FAST_TEST_CURRENT.rated)).toBe("pass");
    expect(verdict("five times", FAST_TEST_CURRENT.rated)).toBe("pass");
    expect(verdict("250 mA", 100)).toBe("fail");
    expect(
      edgeFaults({ unit: "ms", bound: FAST_TEST_CURRENT.max, step: 1, limit: { max: 40 } }),
    ).toEqual([]);
  });

  test("el-106: with one test only, the fast one may be absent; the other never", () => {
    expect(points.trip_5x?.ask?.absentAllowed).toEqual(["not-applicable"]);
    expect(points.trip_1x?.ask?.absentAllowed).toBeUndefined();
    expect(points.trip_1x?.limits?.[0]?.max).toBe(SINGLE_TEST.general);
  });
});

describe("plug fuse by load, BS 1362", () => {
  const particulars = {
    rated_power: { title: "Rated power", type: "number", unit: "kW" },
    csa: { title: "Cross-section", type: "number", unit: "mm2" },
    fused_plug: { title: "Fused", type: "boolean" },
  } as const;
  const judge = judgeOf({ particulars, values: FUSE_VALUES, properties: { fuse: FUSE } });

  test.each(FUSES)("$id: $watts W have a fuse of at most $fuse A", ({ watts, fuse }) => {
    const verdict = (value: number) =>
      judge.judgePoint("fuse", {
        particulars: { rated_power: watts / 1000, csa: 1.5, fused_plug: true },
        answers: { fuse: { value, unit: "A" } },
      });
    expect(verdict(fuse).limits[0]?.bound).toBe(fuse);
    expect([verdict(fuse - 1), verdict(fuse), verdict(fuse + 1)].map((j) => j.verdict)).toEqual([
      "pass",
      "pass",
      "fail",
    ]);
  });
});

test(`${STRAIGHT_THROUGH.id}: any crossing of the conductors fails`, () => {
  expect(judgeOne(POLARITY, "ok").verdict).toBe("pass");
  expect(judgeOne(POLARITY, "not-ok").verdict).toBe("fail");
});
