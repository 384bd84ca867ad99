import fc from "fast-check";
import { expect, it, vi } from "vitest";
import { createPatternEngine } from "./index.ts";

const engine = createPatternEngine();
const pattern = (source: string) => {
  const compiled = engine.compile(source);
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
  return compiled.value;
};

it.each([
  "^[A-Z]{2}-\\d{4}$",
  "b",
  "^.$",
  "^\\S+$",
  "\\s",
  "[\\s\\d]",
  "[^\\s]",
  "^\\w+$",
  "\\bab\\b",
  "[[:alpha:]",
  "[\\[\\]]",
  "\\.",
  "^\\u00e4$",
  "^\\u{1F6AA}$",
  "^\\ud83d\\udeaa$",
  "[\\u{1F600}-\\u{1F6FF}]",
  "\\cI",
  "\\0",
  "[\\b]",
  "^\\p{Lu}\\p{L}*$",
  "\\P{L}",
  "(?<year>\\d{4})",
  "(?:a|b){2,3}?$",
  "a$",
  "\\/",
  "[\\w.\\-]+@",
  "^$",
  "",
])("%s finds what ECMA-262 finds", (source) => {
  const native = new RegExp(source, "u");
  const sample = fc.constantFrom(
    ..."aAbB1_ä🚪.[]:lph@-/\t\n\r\v\f\0\b\u00a0\u2028\u2029\u3000\ufeff\u1680\u200a ",
    "AB-1234",
    "aa",
  );
  fc.assert(
    fc.property(fc.array(sample, { maxLength: 6 }), (parts) => {
      const text = parts.join("");
      expect(pattern(source).test(text)).toBe(native.test(text));
    }),
    { numRuns: 400 },
  );
});

it.each([
  ["(a)\\1", "refers back"],
  ["(?=a)b", "looks ahead"],
  ["(?!a)b", "looks ahead"],
  ["(?<=a)b", "looks behind"],
  ["(?<!a)b", "looks behind"],
  ["(?<n>a)\\k<n>", "refers back by name"],
  ["a{1001}", "counts too far"],
  ["((a{10}){10}){11}", "counts too far in all"],
  ["(a{0,1000}b){1,2}", "makes too large a program"],
  ["[\\S]", "has a class RE2 cannot say"],
  ["(", "is no pattern"],
  ["[[:alpha:]]", "is no pattern"],
  ["(?i)a", "is no pattern of ECMA-262"],
  ["\\Qa\\E", "is no pattern of ECMA-262"],
  ["\\Aa", "is no pattern of ECMA-262"],
  ["a++", "is no pattern of ECMA-262"],
])("%s is refused: it %s", (source) => {
  const compiled = engine.compile(source);
  expect(compiled).toMatchObject({
    ok: false,
    problems: [{ pointer: "", code: "pattern-refused", params: { pattern: source } }],
  });
});

it("a pattern that would keep a backtracking engine busy for ages is no trouble", () => {
  const exec = vi.spyOn(RegExp.prototype, "exec");
  const test = vi.spyOn(RegExp.prototype, "test");
  for (const source of ["(a+)+$", "(a|a)+$", "(a|aa)+$", "^(.*a){20}$"]) {
    expect(pattern(source).test(`${"a".repeat(5000)}b`)).toBe(false);
  }
  const ran = [...exec.mock.contexts, ...test.mock.contexts].map(String);
  expect(ran.length).toBeGreaterThan(0);
  expect(ran.filter((regExp) => regExp.includes("a+"))).toEqual([]);
  vi.restoreAllMocks();
});
