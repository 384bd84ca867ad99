import { expect, test } from "vitest";
import { checklist, graded, reading } from "../judge/testing/checklists.ts";
import type { PointDefinition } from "./meta-schema.ts";
import { reusedPoints } from "./reused-points.ts";

const of = (x: PointDefinition) => checklist({ properties: { x } });
const check: PointDefinition = { $ref: "#/$defs/check", title: "x" };

test("a point's name is never used again for another kind or dimension", () => {
  const earlier = [{ issue: 1, document: of(reading("mm")) }];
  const found = (x: PointDefinition) => reusedPoints(earlier, of(x)).map(({ params }) => params);
  expect(found(reading("m"))).toEqual([]);
  expect(found(reading("Ohm"))).toEqual([
    { point: "x", issue: 1, was: "reading, mm", is: "reading, Ohm" },
  ]);
  expect(found(graded())).toMatchObject([{ was: "reading, mm", is: "graded" }]);
});

test("an issue long past keeps its names too, and inherited names are none", () => {
  const earlier = [
    { issue: 2, document: checklist({ properties: { y: check } }) },
    { issue: 1, document: of(check) },
  ];
  expect(reusedPoints(earlier, of(reading("mm")))).toMatchObject([
    { pointer: "/properties/x", code: "point-reused", params: { issue: 1 } },
  ]);
  expect(reusedPoints(earlier, checklist({ properties: { constructor: check } }))).toEqual([]);
});
