import { describe, expect, test } from "vitest";
import type { Particulars } from "../checklist/answer-types.ts";
import { judgeOf, reading } from "./testing/checklists.ts";

const judge = judgeOf({
  particulars: {
    class: { title: "Protection class", enum: ["I", "II"] },
    length: { title: "Length", type: "number", unit: "m", minimum: 0.5, maximum: 100 },
    cores: { title: "Cores", type: "integer" },
    maker: { title: "Maker", maxLength: 5 },
  },
  properties: {
    earth: reading("Ohm", [{ max: 0.2 }], { ask: { when: "asset.class == 'I'" } }),
    sag: reading("m", [{ max: "asset.length" }]),
    joints: reading("1", [{ max: "asset.cores" }]),
    mark: reading("1", [{ max: 3, when: "asset.maker != 'x'" }]),
  },
});
const one = { value: 1, unit: "1" };
const answers = { sag: { value: 0.1, unit: "m" }, joints: one, mark: one };
const GOOD: Particulars = { class: "II", length: 10, cores: 3, maker: "y" };

describe("a particular outside its own definition never lets a point pass or go unasked", () => {
  test("as they should be, everything asked passes", () => {
    expect(judge.judge({ particulars: GOOD, answers }).overall).toBe("pass");
  });

  test.each([
    ["class", "i", "earth", "particular-not-allowed"],
    ["class", " II", "earth", "particular-not-allowed"],
    ["class", 2, "earth", "wrong-type"],
    ["length", 101, "sag", "particular-too-large"],
    ["length", 0.4, "sag", "particular-too-small"],
    ["length", "10", "sag", "wrong-type"],
    ["length", Number.NaN, "sag", "missing"],
    ["cores", 2.5, "joints", "wrong-type"],
    ["maker", "longer", "mark", "particular-too-long"],
  ] as const)("%s %j", (name, value, point, code) => {
    const { overall, points } = judge.judge({ particulars: { ...GOOD, [name]: value }, answers });
    expect(overall).toBe("undecided");
    expect([points[point]?.verdict, points[point]?.why.code]).toEqual(["undecided", code]);
  });
});

describe("a bound in another unit", () => {
  const bounds = (unit: string, value: number) => {
    const { points } = judgeOf({
      particulars: { t: { title: "Temperature", type: "number", unit } },
      values: { c: { unit, const: value }, f: { unit, formula: "asset.t + 0" } },
      properties: Object.fromEntries(
        ["c", "f", "asset.t", "asset.t + 0", "c + 0"].map((max, index) => [
          `p${index}`,
          reading("Cel", [{ max }]),
        ]),
      ),
    }).judge({
      particulars: { t: value },
      answers: Object.fromEntries([0, 1, 2, 3, 4].map((i) => [`p${i}`, { value: 5, unit: "Cel" }])),
    });
    return Object.values(points).map(({ verdict, bound }) => `${verdict} ${bound}`);
  };

  test("that is a difference of temperatures says nothing of a temperature", () => {
    expect(bounds("K", 283.15)).toEqual(Array(5).fill("undecided null"));
  });

  test("on another scale of temperature is converted exactly", () => {
    expect(bounds("[degF]", 122)).toEqual(Array(5).fill("pass 50"));
  });
});

describe("an empty sheet", () => {
  const optional = judgeOf({ properties: { a: reading("Ohm", [{ max: 1 }]), b: reading("Ohm") } });

  test("is never complete, even where nothing is mandatory", () => {
    const { complete, problems, overall } = optional.judge({ particulars: {}, answers: {} });
    expect([overall, complete]).toEqual(["undecided", false]);
    expect(problems).toEqual([{ pointer: "/answers", code: "nothing-answered", params: {} }]);
  });

  test("is one no more with a single answer", () => {
    const answers = { b: { value: 1, unit: "Ohm" } };
    expect(optional.judge({ particulars: {}, answers })).toMatchObject({
      overall: "undecided",
      complete: true,
      problems: [],
    });
  });
});
