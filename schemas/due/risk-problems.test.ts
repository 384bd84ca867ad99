import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ParticularDefinitions } from "../checklist/meta-schema.ts";
import type { Scalar } from "../formulas/engine-type.ts";
import { rule } from "../testing/rule.ts";
import { addDuration } from "./duration.ts";
import { neverLonger } from "./never-longer.ts";
import { riskProblems } from "./risk-problems.ts";
import type { RuleOf } from "./rule-schema.ts";

type Rule = RuleOf<"by-risk">;
type Cell = Rule["table"]["rules"][number]["when"][number];

const PARTICULARS: ParticularDefinitions = {
  environment: { title: "Environment", enum: ["office", "workshop", "site"] },
  class: { title: "Class", enum: ["II", "I"] },
  days_a_month: { title: "Days used a month", type: "integer", minimum: 0, maximum: 31 },
  handheld: { title: "Held in the hand", type: "boolean" },
  maker: { title: "Maker", type: "string" },
};
const ruleBy = (
  inputs: readonly string[],
  worse: Rule["worse"],
  rows: readonly (readonly [readonly Cell[], string])[],
  more: Partial<Rule> = {},
): Rule => ({
  kind: "by-risk",
  table: {
    policy: "unique",
    inputs: inputs.map((name) => `asset.${name}`),
    rules: rows.map(([when, then]) => rule([...when], then)),
  },
  worse,
  ...more,
});
/** Daily to weekly use, weekly to monthly, less: common practice of a local authority. */
const LADDERS = ruleBy(["days_a_month"], { days_a_month: "up" }, [
  [[{ min: 4 }], "P3M"],
  [[{ min: 1, exclusiveMax: 4 }], "P6M"],
  [[{ max: 0 }], "P12M"],
]);
const ENVIRONMENT: Rule["worse"] = { environment: ["office", "workshop", "site"] };
const found = (one: Rule) =>
  riskProblems(one, { particulars: PARTICULARS }).map(({ pointer, code }) => `${pointer} ${code}`);

test("a ladder's interval by its use has nothing against it", () => {
  expect(found(LADDERS)).toEqual([]);
  // Not known to be whole, the days between 0 and 1 are a hole.
  expect(riskProblems(LADDERS).map(({ code }) => code)).toEqual(["table-hole"]);
});

// HSE HSG107 (2013) asks for a combined inspection and test every 3 months on construction sites
// and every 6 to 12 months in heavy industry; offices by common practice, no source.
test("portable equipment by its environment and class has nothing against it", () => {
  const any = { any: true as const };
  const rows = [
    [["site", any], "P3M"],
    [["workshop", "I"], "P6M"],
    [["workshop", "II"], "P12M"],
    [["office", "I"], "P4Y"],
    [["office", "II"], "P5Y"],
  ] as const;
  expect(
    found(ruleBy(["environment", "class"], { ...ENVIRONMENT, class: ["II", "I"] }, rows)),
  ).toEqual([]);
});

describe("impossible", () => {
  const three = (office: string, workshop: string, site: string, more: Partial<Rule> = {}) =>
    ruleBy(
      ["environment"],
      ENVIRONMENT,
      [
        [["office"], office],
        [["workshop"], workshop],
        [["site"], site],
      ],
      more,
    );

  test.each<[string, Rule, readonly string[]]>([
    ["no duration", three("P1Y", "often", "P3M"), ["/table/rules/1/then risk-not-a-duration"]],
    ["nothing", three("P1Y", "P6M", "P0D"), ["/table/rules/2/then duration-of-nothing"]],
    [
      "a margin",
      three("P1Y", "P6M", "P3M", { late: "P4M" }),
      ["/late window-longer-than-interval"],
    ],
    ["worse longer", three("P1Y", "P3M", "P6M"), ["/table/rules/2/then risk-worse-is-longer"]],
    [
      "no particular",
      ruleBy(["use"], { use: "up" }, [[[{ any: true }], "P1Y"]]),
      ["/table/inputs/0 risk-unknown-factor"],
    ],
    [
      "no order",
      ruleBy(["environment"], {}, [[[{ any: true }], "P1Y"]]),
      ["/worse/environment risk-factor-without-order"],
    ],
    [
      "an order of what can be any text",
      ruleBy(["maker"], { maker: ["a", "b"] }, [[[{ any: true }], "P1Y"]]),
      ["/worse/maker risk-factor-without-order"],
    ],
    [
      "a direction of words",
      ruleBy(["class"], { class: "up" }, [[[{ any: true }], "P1Y"]]),
      ["/worse/class risk-factor-without-order"],
    ],
    [
      "an order of other values",
      ruleBy(["class"], { class: ["II", "III"] }, [[[{ any: true }], "P1Y"]]),
      ["/worse/class risk-order-incomplete", "/worse/class risk-order-unknown"],
    ],
    [
      "an order of what is no input",
      ruleBy(["class"], { class: ["II", "I"], handheld: [false, true] }, [
        [[{ any: true }], "P1Y"],
      ]),
      ["/worse/handheld risk-unknown-factor"],
    ],
    [
      "a hole",
      ruleBy(["handheld"], { handheld: [false, true] }, [[[true], "P1Y"]]),
      ["/table table-hole"],
    ],
  ])("%s", (_, one, problems) => {
    expect(found(one)).toEqual(problems);
  });

  test("the example names the factor, both its values and both times, and the others", () => {
    const rows = [
      [["office", { max: 9 }], "P2Y"],
      [["office", { exclusiveMin: 9 }], "P1Y"],
      [["workshop", { any: true as const }], "P1Y"],
      [["site", { max: 20 }], "P6M"],
      [["site", { exclusiveMin: 20 }], "P9M"],
    ] as const;
    const worse = { ...ENVIRONMENT, days_a_month: "up" as const };
    const one = ruleBy(["environment", "days_a_month"], worse, rows);
    expect(riskProblems(one, { particulars: PARTICULARS })).toEqual([
      {
        pointer: "/table/rules/4/then",
        code: "risk-worse-is-longer",
        params: {
          name: "days_a_month",
          mild: "10",
          worse: "30",
          milder: "P6M",
          longer: "P9M",
          where: ["environment: site"],
        },
      },
    ]);
  });

  test("a table of too many combinations is refused, never passed over", () => {
    const names = ["a", "b", "c", "d", "e", "f", "g", "h"];
    const cuts = [...Array(9).keys()];
    const rows = cuts.map(
      (cut) => [names.map(() => ({ min: cut, exclusiveMax: cut + 1 })), "P1Y"] as const,
    );
    const worse = Object.fromEntries(names.map((name) => [name, "up" as const]));
    const large = ruleBy(names, worse, rows);
    const codes = riskProblems(large).map(({ code }) => code);
    expect(codes).toContain("table-too-large-to-analyse");
  });
});

test("a duration is never longer than another exactly when it ends first from every day", () => {
  const one = fc.oneof(
    fc.integer({ min: 1, max: 14 }).map((n) => `P${n}M`),
    fc.integer({ min: 1, max: 400 }).map((n) => `P${n}D`),
    fc
      .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 40 }))
      .map(([months, days]) => `P${months}M${days}D`),
  );
  const start = fc.integer({ min: 18_000, max: 30_000 });
  fc.assert(
    fc.property(one, one, start, (a, b, day) => {
      const from = day as Parameters<typeof addDuration>[0];
      if (neverLonger(a, b)) expect(addDuration(from, a)).toBeLessThanOrEqual(addDuration(from, b));
      else expect(neverLonger(b, a) || !neverLonger(a, b)).toBe(true);
    }),
    { seed: 3, numRuns: 2000 },
  );
  expect([neverLonger("P30D", "P1M"), neverLonger("P1M", "P30D")]).toEqual([false, false]);
});

test("found exactly where some pair of factors that is no milder has more time", () => {
  const values = ["low", "middle", "high"];
  const particulars: ParticularDefinitions = {
    a: { title: "A", enum: values },
    b: { title: "B", enum: values },
  };
  const order: readonly Scalar[] = values;
  const all = values.flatMap((a) => values.map((b) => [a, b] as const));
  const months = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 9, maxLength: 9 });
  fc.assert(
    fc.property(months, fc.boolean(), (times, sorted) => {
      const list = sorted ? [...times].sort((x, y) => y - x) : times;
      const rows = all.map((when, at) => [when, `P${list[at]}M`] as const);
      const one = ruleBy(["a", "b"], { a: [...values], b: [...values] }, rows);
      const isLonger = all.some(([a, b], mild) =>
        all.some(
          ([c, d], worse) =>
            order.indexOf(c) >= order.indexOf(a) &&
            order.indexOf(d) >= order.indexOf(b) &&
            (list[worse] ?? 0) > (list[mild] ?? 0),
        ),
      );
      expect(riskProblems(one, { particulars }).length > 0).toBe(isLonger);
    }),
    { seed: 11, numRuns: 500 },
  );
});
