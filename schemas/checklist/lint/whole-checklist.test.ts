import { expect, it } from "vitest";
import { codes, limit, lint, point } from "./testing/lint-changed.ts";

const text = { $ref: "#/$defs/text", title: "T" };
const graded = { $ref: "#/$defs/graded", title: "G", minimum: 0, maximum: 5 };
const date = { $ref: "#/$defs/date", title: "D" };

it("a formula may name a point of its own repeat, and nothing of another", () => {
  const max = limit("gap_top", "max");
  expect(codes({ [max]: "answers.hinges * 1" })).not.toContain(`${max} repeated-name-outside`);
  expect(codes({ [max]: "answers.closing * 1" }).join()).not.toContain("repeated-name-outside");
});

it("a value that goes back to repeated points counts as one of them", () => {
  const own = { "/values/half": { unit: "mm", formula: "answers.gap_top / 2" } };
  expect(codes({ ...own, [limit("gap_top", "min")]: "half" }).join()).not.toContain("outside");
  const outside = limit("closing", "when");
  expect(codes({ ...own, [outside]: "half > 1" })).toContain(`${outside} repeated-name-outside`);
});

it("points that wait for one another are told once, with their names", () => {
  const found = lint({
    [point("closing", "ask", "when")]: "answers.sum > 1",
    [point("label", "ask")]: { when: "answers.closing > 1" },
  }).filter(({ code }) => code === "value-cycle");
  expect(found).toEqual([
    {
      pointer: point("closing", "ask", "when"),
      code: "value-cycle",
      params: { names: ["answers.closing", "answers.sum"] },
    },
  ]);
});

it("stops in a circle are told, also where a limit closes it", () => {
  const second = { after: ["closing"], on: ["fail"], points: ["sum"], say: "s" };
  expect(codes({ "/stops/1": second }).join()).not.toContain("stop-stops-itself");
  const back = { after: ["closing"], on: ["fail"], points: ["hinges"], say: "s" };
  expect(codes({ "/stops/1": back }).filter((code) => code.includes("itself"))).toHaveLength(2);
  const bound = { [limit("hinges", "when")]: "answers.closing > 3" };
  expect(codes(bound)).toContain("/stops/0 stop-stops-itself");
});

it("a stop whose source counts its days from what it stops is told", () => {
  const from = (name: string) => ({ notBefore: { from: `answers.${name}`, minus: "P1D" } });
  const both = (name: string) => ({
    "/properties/early": { ...date, limits: [{ ...from(name), basis: "b" }] },
    "/properties/late": date,
    "/stops/1": { after: ["early"], on: ["fail"], points: ["late"], say: "s" },
  });
  expect(codes(both("late"))).toContain("/stops/1 stop-stops-itself");
  expect(codes(both("opened")).join()).not.toContain("stop-stops-itself");
});

it("dates that leave no day open contradict each other", () => {
  const limits = [{ notBefore: "2026-03-01", notAfter: "2026-02-28", basis: "b" }];
  expect(codes({ [point("opened", "limits")]: limits })).toContain(
    `${limit("opened")} limit-contradictory`,
  );
});

it("conditions are tried with everything that words and yes or no can be", () => {
  const particulars = {
    class: { title: "Class", enum: ["I", "II"] },
    wet: { title: "Wet", type: "boolean" },
  };
  const when = (text: string) => {
    const changes = {
      "/particulars/class": particulars.class,
      "/particulars/wet": particulars.wet,
    };
    return codes({ ...changes, [point("label", "ask")]: { when: text } }).join();
  };
  expect(when("asset.class == 'I' && asset.class == 'II'")).toContain("point-unreachable");
  expect(when("asset.wet && !asset.wet || false")).toContain("point-unreachable");
  expect(when("1 > 2")).toContain("point-unreachable");
  expect(when("2 > 1")).not.toContain("unreachable");
  expect(when("asset.class == 'I' && asset.wet")).not.toContain("unreachable");
  expect(when("asset.sockets > 3.0 && asset.sockets < 2.0")).not.toContain("unreachable");
});

it.each<readonly [string, readonly object[], Record<string, number>, number, boolean]>([
  ["sum", [graded], {}, 0, false],
  [
    "sum",
    [
      { ...graded, minimum: 2 },
      { ...graded, minimum: 3 },
    ],
    { p0: 2 },
    3,
    false,
  ],
  [
    "sum",
    [
      { ...graded, minimum: -2 },
      { ...graded, minimum: -1 },
    ],
    { p0: 3 },
    -6,
    true,
  ],
  [
    "sum",
    [
      { ...graded, minimum: -2 },
      { ...graded, minimum: -1 },
    ],
    { p0: 3 },
    -7,
    false,
  ],
  [
    "mean",
    [
      { ...graded, minimum: 1 },
      { ...graded, minimum: 3 },
    ],
    { p0: 9 },
    2,
    true,
  ],
  ["share-of-maximum", [{ ...graded, minimum: 1 }, graded], {}, 0, false],
  ["share-of-maximum", [{ ...graded, minimum: 1 }], { p0: 4 }, 21, true],
])("the lowest band of a %s over %j with weights %j from %d leaves a gap: %s", (...row) => {
  const [method, of, weights, from, gap] = row;
  const points = of.map((definition, index) => [point(`p${index}`), definition] as const);
  const round = { rule: "half-up", decimals: 0 };
  const bands = [{ title: "all", from }];
  const score = {
    title: "S",
    of: of.map((_, index) => `p${index}`),
    method,
    weights,
    round,
    bands,
  };
  const found = codes({ ...Object.fromEntries(points), "/scores": { s: score } });
  expect(found.includes("/scores/s/bands/0/from bands-gap")).toBe(gap);
  const other = { ...score, weights: { p9: 1 } };
  expect(codes({ ...Object.fromEntries(points), "/scores": { s: other } })).toContain(
    "/scores/s/weights/p9 score-weight-unknown",
  );
});

it("names that every object inherits are points only where they are given", () => {
  const found = codes({
    [point("constructor")]: date,
    [point("toString")]: undefined,
    "/stops/1": { after: ["hasownproperty"], on: ["fail"], points: ["constructor"], say: "s" },
    [point("label")]: { ...text, ask: { when: "answers.constructor == 'x'" } },
  });
  expect(found).toContain("/stops/1/after/0 stop-unknown-point");
  expect(found).toContain(`${point("label", "ask", "when")} unknown-name`);
});

it("differences of temperatures are in kelvins, on a scale of degrees too", () => {
  const limits = [
    { min: 50, decision: { rule: "guarded-acceptance", uncertainty: "spread" }, basis: "b" },
    { sameAsLast: { within: "spread" }, basis: "b" },
  ];
  const warm = { $ref: "#/$defs/reading", title: "Warm", quantity: { unit: "Cel" }, limits };
  const told = (unit: string) =>
    codes({ "/values/spread": { unit, const: 0.5 }, [point("warm")]: warm }).filter((code) =>
      code.endsWith("unit-mismatch"),
    );
  expect(told("K")).toEqual([]);
  expect(told("Cel")).toHaveLength(2);
});

it("a number of readings that waits for those readings is a circle", () => {
  const changes = {
    "/particulars/sockets/minimum": 2,
    [point("loops", "quantity", "unit")]: "1",
    [point("loops", "several", "count")]: "answers.loops",
  };
  expect(codes(changes)).toContain(`${point("loops", "several", "count")} value-cycle`);
});
