import { expect, test } from "vitest";
import { addLimit, boundsOf, changeSide, readBound, removeLimit, setBasis } from "./limit-edit.ts";

test("a bound is a number where it reads as one, else a name or a formula", () => {
  expect(readBound(" 4,5 ")).toBe(4.5);
  expect(readBound("-3")).toBe(-3);
  expect(readBound("joints + asset.length * r")).toBe("joints + asset.length * r");
  expect(readBound("   ")).toBeUndefined();
  expect(readBound("1,234,5")).toBe("1,234,5");
});

test("changing the side moves the bound and leaves nothing behind", () => {
  expect(boundsOf(changeSide({ max: 4, basis: "own practice" }, "max", "exclusiveMin"))).toEqual([
    { kind: "exclusiveMin", bound: 4 },
  ]);
});

test("the last limit removed leaves a point without limits, not with none in a list", () => {
  const point = addLimit({ $ref: "#/$defs/reading", title: "Gap" }, { max: 4 });
  expect(removeLimit(point, 0)).toEqual({ $ref: "#/$defs/reading", title: "Gap" });
});

test("a basis of blanks is no basis", () => {
  expect(setBasis({ max: 4, basis: "x" }, "  ")).toEqual({ max: 4 });
});
