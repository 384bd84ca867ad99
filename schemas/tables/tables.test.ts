import { expect, it } from "vitest";
import { failure } from "../formulas/engine-type.ts";
import { rule } from "../testing/rule.ts";
import { tableProblems } from "./analyse.ts";
import { lookUp } from "./look-up.ts";

const ranges = {
  policy: "unique" as const,
  inputs: ["asset.kg"],
  rules: [rule([{ max: 10 }], 1), rule([{ exclusiveMin: 10, max: 20 }], 2)],
};

it.each([
  [10, { value: 1, rule: 0 }],
  [10.000000000000002, { value: 1, rule: 0 }],
  [10.1, { value: 2, rule: 1 }],
])("ranges hold their bounds at 12 significant digits: %d", (kg, expected) => {
  expect(lookUp(ranges, [kg])).toEqual(expected);
});

it("no rule, rules in conflict and a missing input are failures, never a default", () => {
  const both = { ...ranges, rules: [rule([{ any: true }], 1), rule([[1, 2]], 2)] };
  expect(lookUp(ranges, [21])).toEqual(failure("no-rule", { inputs: ["21"] }));
  expect(lookUp(ranges, ["10"])).toMatchObject({ code: "no-rule" });
  expect(lookUp(both, [2])).toEqual(failure("rules-conflict", { rules: [1, 2] }));
  expect(lookUp({ ...both, policy: "any" }, [2])).toMatchObject({ code: "rules-conflict" });
  expect(lookUp({ ...both, policy: "first" }, [2])).toEqual({ value: 1, rule: 0 });
  expect(lookUp({ ...both, policy: "first" }, [undefined])).toEqual(
    failure("missing", { name: "asset.kg" }),
  );
  const unknown = failure("missing", { name: "asset.x" });
  expect(lookUp(both, [unknown])).toBe(unknown);
});

it("rules of an any table may overlap as long as they agree", () => {
  const agreeing = {
    ...ranges,
    policy: "any" as const,
    rules: [rule([{ min: 0 }], 1), rule([5], 1)],
  };
  expect(lookUp(agreeing, [5])).toEqual({ value: 1, rule: 0 });
  expect(tableProblems(agreeing, [{ type: "number", minimum: 0 }])).toEqual([]);
});

it("holes and overlaps are found between the bounds and at them", () => {
  const codes = (first: number, second: number) => {
    const rules = [rule([{ max: first }], 1), rule([{ min: second }], 2)];
    return tableProblems({ ...ranges, rules }, [{ type: "number", minimum: 0, maximum: 30 }]).map(
      ({ code }) => code,
    );
  };
  expect(codes(10, 10)).toEqual(["table-overlap"]);
  expect(codes(10, 11)).toEqual(["table-hole"]);
  expect(tableProblems(ranges, [{ type: "number", minimum: 0, maximum: 20 }])).toEqual([]);
});
