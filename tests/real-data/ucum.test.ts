import { printUnit } from "@roundbook/runner/form";
import { convert, divideUnits, multiplyUnits, type Unit, unitOf } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { ExpressionReader } from "./ucum-expression.ts";
import { type Case, essence, functionalCases } from "./ucum-files.ts";

// UCUM functional tests of 3 February 2021, © Grahame Grieve and contributors, Eclipse Public License.
const validation = functionalCases("validation");
const conversion = functionalCases("conversion");
const definitions = essence();

/**
 * Why a valid code is none of ours. The table holds what is read on a round: laboratory units,
 * annotations and factors inside a unit are left out, and a compound is one `a/b` or `a.b`.
 */
const reasonFor = (code: string): string => {
  if (code.includes("{")) return "an annotation";
  if (code.startsWith("/")) return "nothing before the slash";
  if (/(^|[.(/])\d+(\*|\.[A-Za-z])/.test(code)) return "a factor";
  const parts = code.split(/[./]/);
  return parts.length > 2 ? "more than two units" : "a unit we do not offer";
};

const tally = (words: readonly string[]) => {
  const counts: Record<string, number> = {};
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1;
  return counts;
};

/** Rounds to as many digits as the file prints a result with, at most the fifteen of a double. */
const asPrinted = (value: number, printed: string): number => {
  const digits = printed.replace(/e.*$/, "").replace(".", "").replace(/^0+/, "").length;
  return Number(value.toPrecision(Math.min(15, Math.max(1, digits))));
};

describe.skipIf(validation === null)("UCUM's functional tests: which codes are valid", () => {
  const cases = validation ?? [];
  const isOurs = ({ unit = "" }: Case) => unitOf(unit) !== undefined;

  test("of 529 cases our table takes 169, all of them valid, and refuses all 39 that are invalid", () => {
    const valid = cases.filter((one) => one.valid === "true");
    expect([cases.length, valid.length]).toEqual([529, 490]);
    expect(cases.filter((one) => one.valid === "false" && isOurs(one))).toEqual([]);
    expect(valid.filter(isOurs)).toHaveLength(169);
  });

  test("the valid codes it does not take are counted by the reason", () => {
    const others = cases.filter((one) => one.valid === "true" && !isOurs(one));
    expect(tally(others.map(({ unit = "" }) => reasonFor(unit)))).toEqual({
      "a unit we do not offer": 213,
      "a factor": 36,
      "more than two units": 35,
      "an annotation": 21,
      "nothing before the slash": 16,
    });
  });
});

describe.skipIf(conversion === null)("UCUM's functional tests: conversion", () => {
  const cases = conversion ?? [];
  const isOurs = ({ srcUnit = "", dstUnit = "" }: Case) =>
    unitOf(srcUnit) !== undefined && unitOf(dstUnit) !== undefined;

  test("of 30 cases nine are between units of ours", () => {
    expect([cases.length, cases.filter(isOurs).length]).toEqual([30, 9]);
  });

  test.each(cases.filter(isOurs))(
    "$id: $value $srcUnit are $outcome $dstUnit",
    ({ value, srcUnit = "", dstUnit = "", outcome = "" }) => {
      const result = convert(Number(value), srcUnit, dstUnit) ?? Number.NaN;
      expect(asPrinted(result, outcome)).toBe(Number(outcome));
    },
  );

  /** Each of the other cases, by its id. */
  const LEFT_OUT: Readonly<Record<string, string>> = {
    "3-104": "an exponent below zero",
    "3-105": "an exponent below zero",
    "3-106": "an exponent below zero",
    "3-107": "an exponent below zero",
    "3-108": "more than two units",
    "3-109": "more than two units",
    "3-110": "more than two units",
    "3-111": "more than two units",
    "3-111a": "more than two units",
    "3-113": "a factor",
    "3-114": "a factor",
    "3-115": "a factor",
    "3-120": "more than two units",
    "3-121": "a factor",
    "3-122": "a factor",
    "3-123": "a factor",
    "3-124": "a unit we do not offer",
    "3-125": "a unit we do not offer",
    "3-126": "more than two units",
    "3-127": "a unit we do not offer",
    "3-128": "a unit we do not offer",
  };

  test("each case left out has its reason", () => {
    const others = cases.filter((one) => !isOurs(one)).map(({ id }) => id);
    expect(others).toEqual(Object.keys(LEFT_OUT));
  });
});

describe.skipIf(conversion === null || definitions === null)(
  "UCUM's functional tests by its definitions",
  () => {
    const reader = new ExpressionReader(definitions ?? { units: new Map(), prefixes: new Map() });
    const size = (unit: string) => reader.read(unit)?.factor ?? Number.NaN;

    test.each(conversion ?? [])(
      "$id: our reading of the definitions gives $outcome $dstUnit too",
      ({ value, srcUnit = "", dstUnit = "", outcome = "" }) => {
        const result = (Number(value) * size(srcUnit)) / size(dstUnit);
        expect(asPrinted(result, outcome)).toBe(asPrinted(Number(outcome), outcome));
      },
    );

    const reckoned = [
      ...(functionalCases("multiplication") ?? []).map((one) => ({ one, isProduct: true })),
      ...(functionalCases("division") ?? []).map((one) => ({ one, isProduct: false })),
    ];

    test("all five multiplications and divisions are of units of ours", () => {
      const ours = reckoned.filter(({ one }) => unitOf(one.u1 ?? "") && unitOf(one.u2 ?? ""));
      expect(ours).toHaveLength(5);
    });

    test.each(reckoned)(
      "$one.id: $one.v1 $one.u1 and $one.v2 $one.u2 come to $one.vRes $one.uRes",
      ({ one: { v1, u1 = "", v2, u2 = "", vRes = "", uRes = "" }, isProduct }) => {
        const [left, right] = [unitOf(u1), unitOf(u2)];
        const by = isProduct ? multiplyUnits : divideUnits;
        const unit: Unit | undefined = left && right && by(left, right);
        const value = isProduct ? Number(v1) * Number(v2) : Number(v1) / Number(v2);
        // UCUM's base unit of mass is the gram, ours the kilogram.
        const inBases =
          (value * (unit?.num ?? Number.NaN) * 1000 ** (unit?.dimension[1] ?? 0)) /
          (unit?.den ?? Number.NaN);
        const result = inBases / size(uRes);
        expect(asPrinted(result, vRes)).toBe(asPrinted(Number(vRes), vRes));
      },
    );
  },
);

const names = functionalCases("displayNameGeneration");

describe.skipIf(names === null)("UCUM's functional tests: display names", () => {
  test("all nine are names in full, which we do not print: units have their signs", () => {
    const full = (names ?? []).filter(({ unit = "", display }) => printUnit(unit) !== display);
    expect(full).toHaveLength(9);
  });
});
