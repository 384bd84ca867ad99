import { expect, it } from "vitest";
import type { TableCell, TableDefinition } from "../checklist/meta-schema.ts";
import { rule } from "../testing/rule.ts";
import { tableProblems } from "./analyse.ts";
import type { TableInput } from "./domain.ts";

const told = (policy: TableDefinition["policy"], input: TableInput, cells: readonly TableCell[]) =>
  tableProblems(
    { policy, inputs: ["asset.x"], rules: cells.map((cell, index) => rule([cell], index)) },
    [input],
  ).map(({ pointer, code, params }) => [
    pointer + code,
    ...(Array.isArray(params.where) ? params.where : []),
    ...(Array.isArray(params.inputs) ? params.inputs : []),
  ]);

const number = { type: "number" } as const;
const upTo = { ...number, minimum: 0, maximum: 20 };
const whole = { ...number, integer: true };

it.each<[string, TableInput, readonly TableCell[], readonly unknown[]]>([
  ["a point left out", upTo, [{ exclusiveMax: 10 }, { exclusiveMin: 10 }], ["asset.x = 10", "10"]],
  ["no point left out", upTo, [{ max: 10 }, { exclusiveMin: 10 }], []],
  ["between two", upTo, [{ max: 10 }, { min: 11 }], ["10 < asset.x < 11", "10.5"]],
  ["the end of a domain", upTo, [{ max: 10 }], ["10 < asset.x ≤ 20", "15"]],
  ["below every bound", number, [{ min: 0 }], ["asset.x < 0", "-1"]],
  ["around single values", number, [1, 3], ["asset.x < 1 / 1 < asset.x < 3 / asset.x > 3", "2"]],
  ["no whole number between", whole, [{ max: 10 }, { min: 11 }], []],
  ["one whole number between", whole, [{ max: 10 }, { min: 12 }], ["10 < asset.x < 12", "11"]],
  ["no number of 12 digits between", number, [{ max: 10 }, { min: 10.0000000001 }], []],
  [
    "one number of 12 digits between",
    number,
    [{ max: 10 }, { min: 10.0000000002 }],
    ["10 < asset.x < 10.0000000002", "10.0000000001"],
  ],
  ["any other text", { type: "string" }, ["a", "b"], ["asset.x ≠ a / b", "…"]],
  ["an option", { type: "string", listed: ["a", "b", "c"] }, ["a"], ["asset.x = b / c", "b"]],
  ["a truth", { type: "boolean" }, [true], ["asset.x = false", "false"]],
  ["nothing that is unknown", {}, [{ any: true }], []],
])("a hole is told in signs, with an example: %s", (_, input, cells, expected) => {
  expect(told("unique", input, cells)).toEqual(
    expected.length === 0 ? [] : [["table-hole", ...expected]],
  );
});

it("an overlap is told with its rows, where it is and an example", () => {
  const cells = [{ max: 10 }, { min: 10, max: 15 }, { min: 12 }];
  expect(told("unique", upTo, cells)).toEqual([
    ["table-overlap", "asset.x = 10", "10"],
    ["table-overlap", "12 ≤ asset.x ≤ 15", "12"],
  ]);
  expect(told("any", upTo, cells)).toHaveLength(2);
});

it("a row that no input can reach is told: outside what can be, empty in itself, behind others", () => {
  const outside = { type: "string", listed: ["a", "b"] } as const;
  expect(told("unique", outside, ["a", "b", "c"])).toEqual([["/rules/2table-row-unreachable"]]);
  expect(told("unique", number, [{ any: true }, { min: 5, max: 3 }])).toEqual([
    ["/rules/1table-row-unreachable"],
  ]);
  expect(told("first", upTo, [{ max: 10 }, { max: 5 }, { any: true }])).toEqual([
    ["/rules/1table-row-unreachable"],
  ]);
  // The row that catches the rest stays, even where nothing is left for it.
  expect(told("first", outside, ["a", "b", { any: true }])).toEqual([]);
});

it("more than twenty holes are told as twenty and a word that there are more", () => {
  const cells = Array.from({ length: 30 }, (_, x) => Array.from({ length: 2 }, () => 2 * x));
  const rules = cells.map((cell, index) => rule([cell, { min: index }], index));
  const inputs = [
    { ...number, listed: cells.flat() },
    { ...number, minimum: 0 },
  ];
  const table = { policy: "unique", inputs: ["asset.x", "asset.y"], rules } as const;
  const codes = tableProblems({ ...table, inputs: [...table.inputs] }, inputs).map(
    ({ code }) => code,
  );
  expect(codes).toEqual([...Array(20).fill("table-hole"), "table-more-found"]);
});
