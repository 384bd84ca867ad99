import { expect, test } from "vitest";
import { createWedge } from "./wedge.ts";

const type = (
  keys: readonly string[],
  pause: number,
  changes: { inField?: boolean; shortcut?: boolean } = {},
) => {
  let at = 1_000;
  const wedge = createWedge(() => at);
  return keys.map((key) => {
    at += pause;
    return wedge({ key, shortcut: false, inField: false, ...changes });
  });
};
const last = (found: readonly (string | undefined)[]) => found.at(-1);

test("a fast burst that ends in Enter is a code", () => {
  expect(last(type([..."4012", "Enter"], 8))).toBe("4012");
});

test("the longest pause of a scanner still counts, one longer does not", () => {
  expect(last(type([..."4012", "Enter"], 50))).toBe("4012");
  expect(last(type([..."4012", "Enter"], 51))).toBeUndefined();
});

test("a burst while a field has the focus is left to it", () => {
  expect(type([..."4012", "Enter"], 8, { inField: true })).toEqual(Array(5).fill(undefined));
});

test("shortcuts are no part of a code", () => {
  expect(last(type([..."4012", "Enter"], 8, { shortcut: true }))).toBeUndefined();
});

test("two fast keys are no scan, nor is a burst without Enter", () => {
  expect(last(type(["4", "0", "Enter"], 8))).toBeUndefined();
  expect(last(type([..."4012"], 8))).toBeUndefined();
});

test("a capital's Shift does not break the burst, another key does", () => {
  expect(last(type(["Shift", "A", "Shift", "B", "-", "7", "Enter"], 8))).toBe("AB-7");
  expect(last(type(["4", "0", "1", "Tab", "2", "Enter"], 8))).toBeUndefined();
});

test("what a hand typed before the burst is not part of the code", () => {
  let at = 0;
  const wedge = createWedge(() => at);
  const press = (key: string, pause: number) => {
    at += pause;
    return wedge({ key, shortcut: false, inField: false });
  };
  press("9", 400);
  for (const [place, key] of [..."4012"].entries()) press(key, place === 0 ? 400 : 8);
  expect(press("Enter", 8)).toBe("4012");
});

test("a clock that is set back in mid-burst begins a new burst", () => {
  const times = [1_000, 1_008, 500, 508, 516];
  const wedge = createWedge(() => times.shift() ?? 0);
  const found = [..."4012", "Enter"].map((key) => wedge({ key, shortcut: false, inField: false }));
  expect(found.at(-1)).toBeUndefined();
});
