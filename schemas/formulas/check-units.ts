import type { Unit } from "../units/unit.ts";
import { differenceUnit, divideUnits, multiplyUnits, sameUnit, unitOf } from "../units/units.ts";
import type { Arithmetic } from "./tree.ts";

/**
 * The unit a sum, difference, product or quotient comes out in; null for plain numbers and
 * undefined where it means nothing (Ohm + m, Ohm + mOhm, Cel × m). A plain number takes the unit
 * of what it is added to and leaves the unit of what it multiplies.
 */
export const combineUnits = (
  op: Arithmetic,
  left: Unit | null,
  right: Unit | null,
): Unit | null | undefined => {
  switch (op) {
    case "+":
      return add(left, right);
    case "-":
      return subtract(left, right);
    case "*":
      return left && right ? multiplyUnits(left, right) : (left ?? right);
    case "/":
      return right ? divide(left, right) : left;
  }
};

const divide = (left: Unit | null, right: Unit): Unit | undefined => {
  const one = left ?? unitOf("1");
  return one && divideUnits(one, right);
};

const add = (left: Unit | null, right: Unit | null): Unit | null | undefined => {
  if (!left || !right) return left ?? right;
  if (sameUnit(left, right)) return left;
  if (right.zero !== 0) return isDifference(left, right) ? right : undefined;
  return isDifference(right, left) ? left : undefined;
};

/** 60 °C − 50 °C is 10 K, and 60 °C − 10 K is 50 °C. */
const subtract = (left: Unit | null, right: Unit | null): Unit | null | undefined => {
  if (!left || !right) return left ?? right;
  if (sameUnit(left, right)) return differenceUnit(left);
  return isDifference(right, left) ? left : undefined;
};

const isDifference = (step: Unit, scale: Unit): boolean =>
  scale.zero !== 0 && sameUnit(step, differenceUnit(scale));
