import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compileFormula } from "./compile.ts";
import type { FormulaContext, NameTypes } from "./engine-type.ts";
import { createFormulaEngine } from "./index.ts";
import { parseFormula } from "./parse.ts";
import { RESERVED_NAMES } from "./reserved.ts";
import { contextOf } from "./testing/context-of.ts";
import {
  PLAIN_NAMES,
  randomGiven,
  randomNumber,
  randomText,
  randomTruth,
} from "./testing/random-formulas.ts";
import { MAX_FORMULA_DEPTH, MAX_FORMULA_NODES, type Node } from "./tree.ts";

const engine = createFormulaEngine();
const NAMES: NameTypes = new Map([...PLAIN_NAMES, ["n", { type: "number" }]]);
const codeOf = (source: string) => {
  const result = compileFormula(source, NAMES, undefined, engine);
  return result.ok ? "read" : result.problems[0]?.code;
};

/** Nodes of a tree, however it is nested. */
const nodesOf = (node: Node): number => {
  const below = Object.values(node).flatMap((part): Node[] =>
    Array.isArray(part) ? part : typeof part === "object" ? [part] : [],
  );
  return below.reduce((sum, child) => sum + nodesOf(child), 1);
};

/** A context that counts how often something is read from it. */
const counting = (context: FormulaContext) => {
  const counter = { reads: 0 };
  const watch = <T extends object>(part: T): T =>
    new Proxy(part, {
      get: (target, key) => {
        counter.reads += 1;
        return Reflect.get(target, key);
      },
    });
  const { asset, answers, values } = context;
  return {
    counter,
    context: { asset: watch(asset), answers: watch(answers), values: watch(values) },
  };
};

describe("formulas built to explode", () => {
  const nested = (depth: number) => `${"(".repeat(depth)}n${")".repeat(depth)}`;
  const chain = (length: number) => `${"sunny ? 1 : ".repeat(length)}n`;
  it.each([
    ["brackets, 23 deep", nested(23), "read"],
    ["brackets, 24 deep", nested(24), "formula-too-complex"],
    ["brackets to the last character", nested(249), "formula-too-complex"],
    ["a chain of 23 choices", chain(23), "read"],
    ["a chain of 24 choices", chain(24), "formula-too-complex"],
    ["a sum of 199 nodes", `n${"+n".repeat(99)}`, "read"],
    ["a sum of 201 nodes", `n${"+n".repeat(100)}`, "formula-too-complex"],
    ["199 signs", `${"-".repeat(199)}n`, "read"],
    ["499 signs", `${"-".repeat(499)}n`, "formula-too-complex"],
    ["499 strokes", "!".repeat(499), "formula-syntax"],
    ["a list of 190", `n in [${"1,".repeat(190)}]`, "read"],
    ["a list of 200", `n in [${"1,".repeat(200)}]`, "formula-too-complex"],
    ["180 arguments", `max(${"1,".repeat(180)}n)`, "read"],
    ["lists in lists", `n in ${"[".repeat(200)}${"]".repeat(200)}`, "formula-too-complex"],
    ["a list in a list", "n in [[1]]", "formula-not-allowed"],
    ["lists opened and not closed", "[".repeat(499), "formula-too-complex"],
    ["macros in macros", `${"[1].all(x,".repeat(20)}true${")".repeat(20)}`, "formula-too-complex"],
    ["indices", `n${"[0]".repeat(100)}`, "formula-too-complex"],
    ["members", `n${".n".repeat(100)}`, "formula-too-complex"],
    ["1e400", "1e400 > n", "formula-not-allowed"],
    ["1e-400, which is 0", "1e-400 == 0", "read"],
    ["hexadecimal digits", `0x${"f".repeat(400)} > n`, "formula-not-allowed"],
    ["decimal digits", `${"9".repeat(490)} > n`, "formula-not-allowed"],
    ["decimals", `0.${"0".repeat(480)}1 > n`, "read"],
    ["a text of 490 characters", `grade == '${"x".repeat(489)}'`, "read"],
    ["a text that does not end", `'${"\\'".repeat(240)}`, "formula-syntax"],
    ["500 quotes", "'\"".repeat(250), "formula-syntax"],
    ["a comment alone", `//${"'".repeat(400)}`, "formula-syntax"],
    ["a comment at the end", "n > 1 // (((((", "read"],
    ["a comment of another language", "n /* * */ > 1", "formula-syntax"],
    [
      "every escape",
      "grade == '\\a\\b\\f\\n\\r\\t\\v\\\\\\?\\`\\x41\\101\\u0041\\U00000041'",
      "read",
    ],
    ["half a surrogate pair, escaped", "grade == '\\ud83d'", "formula-syntax"],
    ["past the last code point", "grade == '\\U00110000'", "formula-syntax"],
    ["a NUL", "n\0", "formula-syntax"],
    ["letters that only look Latin", "ո > 1", "formula-syntax"],
    ["a space that is none", "n\u00a0> 1", "formula-syntax"],
    ["text that turns round", "n > 1\u202e", "formula-syntax"],
    ["nothing", "", "formula-syntax"],
    ["501 characters", `n${" ".repeat(500)}`, "formula-too-long"],
    ["a million brackets", "(".repeat(1_000_000), "formula-too-long"],
  ])("%s", (_, source, code) => {
    expect(codeOf(source)).toBe(code);
  });

  it("what a formula costs is bounded by its nodes, whatever it says", () => {
    const formulas = fc.oneof(randomNumber, randomText, randomTruth);
    const property = fc.property(formulas, randomGiven, (source, given) => {
      const tree = parseFormula(source);
      const compiled = engine.compile(source, PLAIN_NAMES);
      if (!tree.ok || !compiled.ok) throw new Error(source);
      const nodes = nodesOf(tree.value);
      expect(nodes).toBeLessThanOrEqual(MAX_FORMULA_NODES);
      const evaluated = counting(contextOf(given));
      compiled.value.evaluate(evaluated.context);
      expect(evaluated.counter.reads).toBeLessThanOrEqual(nodes);
      const shown = counting(contextOf(given));
      compiled.value.working(shown.context);
      expect(shown.counter.reads).toBeLessThanOrEqual(nodes * MAX_FORMULA_DEPTH);
    });
    expect(() => fc.assert(property, { seed: 11, numRuns: 3000 })).not.toThrow();
  });
});

describe("names that are no names", () => {
  it.each([
    "asset.constructor",
    "asset.__proto__",
    "answers.hasOwnProperty",
    "asset.toString == 'x'",
    "asset.__defineGetter__",
    "constructor",
    "hasOwnProperty",
    "valueOf",
    "__proto__",
    "prototype",
    "asset",
    "asset['constructor']",
    "asset.constructor.constructor",
    "constructor(1)",
    "toString()",
    "__proto__(1)",
    "asset.constructor('x')",
    "hasOwnProperty('n')",
    "n.constructor",
    "'x'.length",
    "cel.bind(n, 1, n)",
  ])("%s stands for nothing", (source) => {
    const allowed = ["unknown-name", "formula-not-allowed", "reserved-word"];
    expect(allowed).toContain(codeOf(source));
  });

  const literals = ["true", "false", "null"];
  it.each([...RESERVED_NAMES].filter((word) => !literals.includes(word)))(
    "%s is a word of the language, whatever is called so",
    (word) => {
      const names: NameTypes = new Map([[word, { type: "number" }]]);
      for (const source of [word, `${word} + 1`, `1 + ${word}`, `${word}(1)`, `max(1, ${word})`]) {
        const result = compileFormula(source, names, undefined, engine);
        const start = source.indexOf(word);
        const params = { word, start, end: start + word.length };
        expect(result).toEqual({
          ok: false,
          problems: [{ pointer: "", code: "reserved-word", params }],
        });
      }
    },
  );
});

const PIECES =
  "n|asset|.|answers|a|wet|(|)|&&|'|\"|\\|?|:|1|e|[|]| |-|!|in|has(|u|b'|r\"|//|\n|\r|0x|,|{|}|`|🐱|\ud83d|'''|max(|.all(x,|while|==|<|1e999|%|@";
const piece = fc.constantFrom(...PIECES.split("|"));
const valid = fc.oneof(randomNumber, randomText, randomTruth);
const mutated = fc
  .tuple(valid, fc.array(fc.tuple(fc.nat(499), fc.nat(3), piece), { minLength: 1, maxLength: 4 }))
  .map(([text, changes]) =>
    changes.reduce((now, [at, cut, insert]) => {
      const place = at % (now.length + 1);
      return now.slice(0, place) + insert + now.slice(place + cut);
    }, text),
  );

describe("any text is a formula or a problem with its place in the text, never an exception", () => {
  it.each([
    ["random characters", fc.string({ unit: "binary", maxLength: 60 }), 21],
    ["random printable text", fc.string({ unit: "grapheme", maxLength: 60 }), 22],
    ["words in any order", fc.array(piece, { maxLength: 40 }).map((all) => all.join("")), 23],
    ["formulas with a few slips", mutated, 24],
    ["formulas with a few slips", mutated, 25],
  ] as const)("%s (%#)", (_, texts, seed) => {
    let read = 0;
    const property = fc.property(texts, randomGiven, (source, given) => {
      const result = compileFormula(source, NAMES, undefined, engine);
      if (result.ok) {
        read += 1;
        expect(["number", "string", "boolean", "object"]).toContain(
          typeof result.value.evaluate(contextOf(given)),
        );
        expect(typeof result.value.working(contextOf(given))).toBe("string");
        return;
      }
      expect(result.problems.length).toBeGreaterThan(0);
      for (const { params } of result.problems) {
        if (params.start === undefined) continue;
        expect(params.start).toBeLessThanOrEqual(Number(params.end));
        expect(params.end).toBeLessThanOrEqual(source.length);
      }
    });
    fc.assert(property, { seed, numRuns: 5000 });
    expect(read).toBeLessThan(5000);
  });
});
