import { expect, it } from "vitest";
import type { TableCell, TableDefinition } from "../checklist/meta-schema.ts";
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

const collecting = {
  policy: "collect" as const,
  aggregate: "min" as const,
  expect: 2,
  inputs: ["asset.kg"],
  rules: [rule([{ any: true }], 5), rule([{ max: 10 }], 3), rule([{ exclusiveMin: 10 }], 7)],
};

it("a collecting table gives the least or greatest outcome of as many rows as it declares", () => {
  expect(lookUp(collecting, [10])).toEqual({ value: 3, rule: 1 });
  expect(lookUp(collecting, [11])).toEqual({ value: 5, rule: 0 });
  expect(lookUp({ ...collecting, aggregate: "max" }, [11])).toEqual({ value: 7, rule: 2 });
  expect(tableProblems(collecting, [{ type: "number" }])).toEqual([]);
});

it("fewer or more rows than a collecting table declares are a failure, never a value", () => {
  const fewer = { ...collecting, rules: collecting.rules.slice(0, 2) };
  const found = (table: TableDefinition, kg: number) => lookUp(table, [kg]);
  expect(found(fewer, 11)).toEqual(failure("hits-not-as-declared", { expected: 2, found: 1 }));
  expect(found({ ...collecting, expect: 1 }, 11)).toMatchObject({ code: "hits-not-as-declared" });
  expect(found({ ...collecting, expect: undefined }, 11)).toMatchObject({
    params: { expected: null, found: 2 },
  });
  const words = { ...collecting, rules: [rule([1], "a"), rule([1], "b")] };
  expect(found(words, 1)).toMatchObject({ code: "wrong-type" });
});

it("collecting needs an aggregate, a declared number and numbers; other policies have neither", () => {
  const codes = (table: TableDefinition) =>
    tableProblems(table, [{ type: "number" }]).map(({ pointer, code }) => `${pointer} ${code}`);
  const bare = { policy: "collect" as const, inputs: ["asset.kg"], rules: collecting.rules };
  expect(codes(bare)).toEqual([" table-policy-needs", " table-policy-needs"]);
  expect(codes({ ...collecting, policy: "unique" })).toEqual([
    "/aggregate table-policy-without",
    "/expect table-policy-without",
  ]);
  const words = { ...collecting, rules: [rule([{ any: true }], "a")] };
  expect(codes(words)).toEqual(["/rules table-collects-words"]);
  const mixed = { ...ranges, rules: [rule([{ any: true, min: 3 }], 1)] };
  expect(codes(mixed)).toEqual(["/rules/0/when/0 table-cell-any-and-more"]);
});

it("a number that is not finite is a failure, even where any number fits", () => {
  const any = { ...ranges, rules: [rule([{ any: true }], 1)] };
  expect(lookUp(any, [Number.NaN])).toMatchObject({ code: "not-finite" });
});

it("a table that would take too long to look through is told as that", () => {
  const columns = Array.from({ length: 8 }, (_, column) => column);
  // Each of ten layers cuts three of the inputs at places of its own: any inputs hit one row of each.
  const slice = (layer: number, part: number): TableCell => {
    const from = part * 100 + layer;
    if (part === 0) return { exclusiveMax: 100 + layer };
    return part === 3 ? { min: from } : { min: from, exclusiveMax: from + 100 };
  };
  const rules = Array.from({ length: 480 }, (_, index) => {
    const [layer, part] = [index % 10, Math.floor(index / 10)];
    const parts = [part % 4, Math.floor(part / 4) % 4, Math.floor(part / 16) + 1];
    const when = columns.map((column): TableCell => {
      const own = parts[(column + layer) % 8];
      return own === undefined ? { any: true } : slice(layer, own);
    });
    return rule(when, 1);
  });
  const table = { ...collecting, expect: 10, inputs: columns.map((c) => `asset.x${c}`), rules };
  const inputs = columns.map(() => ({ type: "number", minimum: 150 }) as const);
  expect(tableProblems(table, inputs)).toEqual([
    { pointer: "", code: "table-too-large-to-analyse", params: {} },
  ]);
});
