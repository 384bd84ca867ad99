import { expect, test } from "vitest";
import { typoDistance } from "./typo-distance.ts";

test("a letter added, left out, changed or swapped with its neighbour is one step", () => {
  expect(typoDistance("lead", "lead", 2)).toBe(0);
  expect(typoDistance("lead", "leead", 2)).toBe(1);
  expect(typoDistance("lead", "lad", 2)).toBe(1);
  expect(typoDistance("lead", "load", 2)).toBe(1);
  expect(typoDistance("lead", "laed", 2)).toBe(1);
  expect(typoDistance("monitor", "mointer", 2)).toBe(2);
});

test("what is further than asked is one step more than that, however far", () => {
  expect(typoDistance("lead", "ladder", 2)).toBe(3);
  expect(typoDistance("", "abc", 2)).toBe(3);
  expect(typoDistance("kitten", "sitting", 2)).toBe(3);
});

/** The same by its definition, without a bound. */
const plain = (a: string, b: string): number => {
  const d = Array.from({ length: a.length + 1 }, (_, i) =>
    Array.from({ length: b.length + 1 }, (_, j) => (i === 0 ? j : j === 0 ? i : 0)),
  );
  const at = (i: number, j: number) => d[i]?.[j] ?? 0;
  for (let i = 1; i <= a.length; i += 1)
    for (let j = 1; j <= b.length; j += 1) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, at(i - 2, j - 2) + 1);
      (d[i] as number[])[j] = least;
    }
  return at(a.length, b.length);
};

test("every pair of words of up to four letters of three is as far as the definition says", () => {
  const words = [""];
  for (let at = 0; words[at] !== undefined && (words[at] as string).length < 4; at += 1)
    for (const letter of "abc") words.push(words[at] + letter);
  expect(words).toHaveLength(121);
  for (const a of words)
    for (const b of words)
      expect([a, b, typoDistance(a, b, 2)]).toEqual([a, b, Math.min(plain(a, b), 3)]);
});
