import { describe, expect, it } from "vitest";
import { unitOf } from "../units/units.ts";
import { wordsIn } from "./compile.ts";
import type { NameType } from "./engine-type.ts";
import { createFormulaEngine } from "./index.ts";

const engine = createFormulaEngine();
const NAMES = new Map<string, NameType>([
  ["asset.length", { type: "number", unit: unitOf("m") }],
  ["asset.class", { type: "string", options: ["I", "II"] }],
  ["asset.kind", { type: "string", options: ["lead", "drum"] }],
  ["asset.wet", { type: "boolean" }],
  ["answers.flow", { type: "number", unit: unitOf("Cel") }],
  ["joints", { type: "number", unit: unitOf("Ohm") }],
  ["n", { type: "number" }],
]);
const problemsOf = (source: string) => {
  const result = engine.compile(source, NAMES);
  return result.ok ? [] : result.problems;
};

/** The piece of the text that a problem's place cuts out. */
const pointedAt = (source: string) => {
  const { start, end } = problemsOf(source)[0]?.params ?? {};
  return source.slice(Number(start), Number(end));
};

describe("the place of a problem cuts out of the text what is wrong", () => {
  it.each([
    // UTF-16: é is one unit, 🐱 two, and e with a combining accent two.
    ["asset.class == 'é🐱e\u0301' || asset.wett", "not-an-option", "'é🐱e\u0301'"],
    ["'🐱🐱' == '🐱' && lenght > 1", "unknown-name", "lenght"],
    ["n >\r\n  1 // 🐱\r\n&& asset.wett", "unknown-name", "asset.wett"],
    ["// é🐱\nn +\n\tasset.class", "type-mismatch", "asset.class"],
    ["'🐱' == '🐱' && joints + asset.length > n", "unit-mismatch", "joints + asset.length"],
    ["'🐱' == '🐱' && n % 2 > 1", "formula-not-allowed", "n % 2"],
    ["asset\r\n.\r\nlenght > 1", "unknown-name", "asset\r\n.\r\nlenght"],
    ["n + 🐱", "formula-syntax", "🐱"],
    ["n + é", "formula-syntax", "é"],
    ["n > 1 &&\r\n", "formula-syntax", ""],
    ["n + 'I\r\n'", "formula-syntax", "\r"],
    ["'é\\q' == asset.class", "formula-syntax", "\\q"],
    ["n n", "formula-syntax", "n"],
    [
      "(joints + 1) * n + (n - asset.length)",
      "unit-mismatch",
      "(joints + 1) * n + (n - asset.length)",
    ],
    ["((n) + (n)) / ( /* */ n)", "formula-syntax", "/"],
    ["(n + 1) * (asset.wet ? joints : asset.length)", "unit-mismatch", "asset.length"],
    ["!(n + 1)", "type-mismatch", "n + 1"],
    ["!((n) + (1))", "type-mismatch", "(n) + (1)"],
    ["max(n, (1 + n) % ')'.size())", "formula-not-allowed", "(1 + n) % ')'.size()"],
    ["1e400 > n", "formula-not-allowed", "1e400"],
    [`n < ${"9".repeat(309)}`, "formula-not-allowed", "9".repeat(309)],
    ["n > 1 && maxx(n, 1) > 1", "unknown-name", "maxx"],
    ["n + while", "reserved-word", "while"],
    ["asset.in", "reserved-word", "in"],
    ["n + __proto__", "reserved-word", "__proto__"],
    ["asset.class == 'III'", "not-an-option", "'III'"],
    ["[1].all(1, n > 0)", "formula-not-allowed", "1"],
  ])("%j: %s", (source, code, text) => {
    expect([problemsOf(source)[0]?.code, pointedAt(source)]).toEqual([code, text]);
  });

  it("every wrong name, type and unit is told, not the first alone", () => {
    expect(problemsOf("max(foo, bar) > baz || !n").map(({ code }) => code)).toEqual([
      "unknown-name",
      "unknown-name",
      "unknown-name",
      "type-mismatch",
    ]);
  });
});

describe("an unknown name is told with the nearest that is known", () => {
  it.each([
    ["asset.lenght > 1", "asset.lenght", "asset.length"],
    ["answers.flwo > 1", "answers.flwo", "answers.flow"],
    ["joint > 1", "joint", "joints"],
    ["asets.length > 1", "asets.length", "asset.length"],
    // The right word in the wrong place.
    ["length > 1", "length", "asset.length"],
    ["asset.flow > 1", "asset.flow", "answers.flow"],
    ["answers.joints > 1", "answers.joints", "joints"],
    ["Max(n, 1) > 1", "Max", "max"],
    ["rond(n) > 1", "rond", "round"],
    ["asset.something_else > 1", "asset.something_else", null],
  ])("%s", (source, name, nearest) => {
    const [found] = problemsOf(source);
    expect(found).toMatchObject({ code: "unknown-name", params: { name, nearest } });
  });
});

describe("texts and what they can be", () => {
  it.each([
    // Nothing is compared with the options here: the text is another outcome.
    ["asset.wet ? asset.class : 'none'", []],
    // Each text is held against the left side only.
    ["asset.class in ['I', 'II'] || asset.class in ['I', asset.kind]", []],
    ["'lead' in [asset.class, asset.kind]", ["asset.class"]],
    ["asset.class in ['I', 'III']", ["asset.class"]],
  ])("%s", (source, names) => {
    const found = problemsOf(source).filter(({ code }) => code === "not-an-option");
    expect(found.map(({ params }) => params.name)).toEqual(names);
  });
});

describe("words a formula mentions, read without its tree", () => {
  it.each([
    ["// don't use x\nspare + 'y'", ["spare"]],
    ["'// no comment' == kind && n > 1 // 'z", ["kind", "n"]],
    ['"it\'s" == a // b', ["a"]],
  ])("%j", (source, words) => {
    expect(wordsIn(source)).toEqual(words);
  });
});
