import type { ParticularDefinitions } from "@roundbook/schemas";
import { expect, test } from "vitest";
import {
  addFactor,
  addRow,
  beginRisk,
  type Cell,
  cellOf,
  cellWords,
  chosenIn,
  factorsOf,
  possibleFactors,
  readOrder,
  readRange,
  removeFactor,
  removeRow,
  setCell,
  setFactor,
} from "./interval-risk.ts";

const PARTICULARS: ParticularDefinitions = {
  note: { title: "Note", order: 1, type: "string" },
  use: { title: "Use", order: 2, type: "string", enum: ["rare", "weekly", "daily"] },
  pier: { title: "On the pier", order: 3, type: "boolean" },
  age: { title: "Age", order: 4, type: "number", unit: "a" },
};

test("a table begins with the first particular it can rest on, in its own order", () => {
  expect(possibleFactors(PARTICULARS)).toEqual(["use", "pier", "age"]);
  expect(beginRisk(PARTICULARS)).toMatchObject({
    table: { inputs: ["asset.use"], rules: [{ when: [{ any: true }] }] },
    worse: { use: ["rare", "weekly", "daily"] },
  });
});

test("a factor that comes or goes takes its cells and its order with it", () => {
  const two = addFactor(addRow(beginRisk(PARTICULARS)), "age", PARTICULARS);
  expect(two.table.rules.map(({ when }) => when.length)).toEqual([2, 2]);
  expect(two.worse).toEqual({ use: ["rare", "weekly", "daily"], age: "up" });
  const one = removeFactor(two, 0);
  expect(factorsOf(one)).toEqual(["age"]);
  expect(one.worse).toEqual({ age: "up" });
  expect(removeFactor(one, 0)).toBe(one);
});

test("another factor in a column asks for any of its values, not for those of the old one", () => {
  const rule = setCell(beginRisk(PARTICULARS), 0, 0, "daily");
  const next = setFactor(rule, 0, "pier", PARTICULARS);
  expect(next.table.rules[0]?.when).toEqual([{ any: true }]);
  expect(next.worse).toEqual({ pier: [false, true] });
});

test("the last rule stays", () => {
  const one = beginRisk(PARTICULARS);
  expect(removeRow(one, 0)).toBe(one);
  expect(removeRow(addRow(one), 0).table.rules).toHaveLength(1);
});

test("a cell of all or none of its values fits any; of some it names them in their order", () => {
  const values = ["rare", "weekly", "daily"];
  expect(cellOf(values, values)).toEqual({ any: true });
  expect(cellOf([], values)).toEqual({ any: true });
  expect(cellOf(["daily", "rare"], values)).toEqual(["rare", "daily"]);
  expect(cellOf(["daily"], values)).toBe("daily");
  expect(chosenIn(["rare", "daily"])).toEqual(["rare", "daily"]);
  expect(chosenIn({ any: true })).toBeNull();
});

test.each<[string, Cell]>([
  ["any", { any: true }],
  ["5", 5],
  ["up to 5", { max: 5 }],
  ["under 5", { exclusiveMax: 5 }],
  ["over 10", { exclusiveMin: 10 }],
  ["10 or more", { min: 10 }],
  ["5 to 10", { min: 5, max: 10 }],
  ["over 5 to 10", { exclusiveMin: 5, max: 10 }],
  ["5 to under 10", { min: 5, exclusiveMax: 10 }],
  ["over 5 to under 10", { exclusiveMin: 5, exclusiveMax: 10 }],
])("“%s” is a cell of numbers, and its words say it again", (text, cell) => {
  expect(readRange(text)).toEqual(cell);
  expect(cellWords(cell)).toBe(text);
});

test("what is no range is not taken for any", () => {
  for (const text of ["old", "5 to", "1 2"]) expect(readRange(text)).toBeUndefined();
});

test("an order names every value once", () => {
  const values = ["rare", "daily"];
  expect(readOrder("daily, rare", values)).toEqual(["daily", "rare"]);
  expect(readOrder("no, yes", [true, false])).toEqual([false, true]);
  for (const text of ["daily", "daily, daily", "daily, rare, rare", "daily, never"])
    expect(readOrder(text, values)).toBeUndefined();
});
