import { expect, it } from "vitest";
import { createFormulaEngine } from "../../formulas/index.ts";
import { checklist, type Parts, reading } from "../../judge/testing/checklists.ts";
import { lintChecklist } from "../lint-checklist.ts";

const found = (parts: Parts) =>
  lintChecklist(checklist(parts), createFormulaEngine())
    .map(({ pointer, code }) => `${pointer} ${code}`)
    .filter((line) => /too-many|calculation/.test(line));

const points = (count: number) =>
  Object.fromEntries(
    Array.from({ length: count }, (_, index) => [
      `p${index}`,
      reading("Ohm", [{ max: 1, basis: "Invented" }]),
    ]),
  );
const repeated = (count: number, atMost: number | undefined): Parts => ({
  particulars: { n: { title: "Number", type: "integer" } },
  properties: points(count),
  groups: [
    {
      id: "bays",
      title: "Bays",
      points: Object.keys(points(count)),
      repeat: { each: "Bay", count: "asset.n", ...(atMost === undefined ? {} : { atMost }) },
    },
  ],
});

it("a sheet that no inspection could hold is not issued", () => {
  expect(found(repeated(10, undefined))).toEqual([]);
  expect(found(repeated(11, undefined))).toEqual(["/groups too-many-answers"]);
  expect(found(repeated(11, 90))).toEqual([]);
});

it("a calculation without an answer behind it is pointed at", () => {
  const calculated = (calculate: string): Parts => ({
    particulars: { length: { title: "Length", type: "number", unit: "Ohm" } },
    values: { twice: { unit: "Ohm", formula: "answers.p0 * 2" } },
    properties: {
      ...points(1),
      sum: { $ref: "#/$defs/calculated", title: "Sum", quantity: { unit: "Ohm" }, calculate },
    },
  });
  expect(found(calculated("asset.length * 2"))).toEqual([
    "/properties/sum/calculate calculation-without-answer",
  ]);
  expect(found(calculated("answers.p0 + asset.length"))).toEqual([]);
  expect(found(calculated("twice"))).toEqual([]);
});
