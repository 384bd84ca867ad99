import type { Random } from "./random.ts";

const nested = (levels: number): unknown => (levels === 0 ? 1 : [nested(levels - 1)]);

/** Any JSON type, empty, huge, tiny, deep and with names that objects inherit. */
export const ODD_VALUES: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -0,
  -1,
  1.5,
  1e308,
  -1e308,
  5e-324,
  2 ** 60,
  "",
  "x",
  "asset.length",
  "2026-02-31",
  "P1Y",
  "#/$defs/reading",
  [],
  [[]],
  [null],
  {},
  { any: true },
  { "": "" },
  { const: "x", title: "x" },
  nested(40),
  JSON.parse('{"__proto__":{"polluted":true}}'),
  JSON.parse('{"constructor":{"prototype":{"polluted":true}}}'),
];

/** What only a program can put into a document. */
export const NOT_JSON: readonly unknown[] = [
  Number.NaN,
  Number.POSITIVE_INFINITY,
  undefined,
  10n,
  Symbol("x"),
  () => 1,
  new Map([["a", 1]]),
  /x/,
];

export const ODD_TEXTS: readonly string[] = [
  "half \ud83d",
  "\udc00",
  "cut\u0000here",
  "\u202egnp",
  "e\u0301\u0323".repeat(20),
  "👩🏽‍🔧",
  "x".repeat(501),
  "ẞ".repeat(100_000),
  "/~01~10",
  "%s%n",
];

export const ODD_NAMES: readonly string[] = [
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "",
  "x@y",
  "a/b~c",
  "\ud800",
  "in",
  "answers",
  "x".repeat(63),
  "x".repeat(64),
];

/** Formulas that are wrong, on the edge, or built to explode. */
export const ODD_FORMULAS: readonly string[] = [
  "1 / 0",
  "1e308 * 1e308",
  "asset.length / (asset.length - asset.length)",
  "asset.__proto__",
  "asset.constructor.name",
  "answers['x']",
  "[1, 2].map(x, x)",
  "has(asset.length)",
  "min(max(abs(round(1))))",
  "round(1, 2, 3)",
  "'a' + 1",
  "true ? 1 : 'x'",
  "asset.length in [1, 2, 3]",
  "!".repeat(300),
  `${"-".repeat(499)}1`,
  `${"(".repeat(250)}1${")".repeat(249)}`,
  `1${" + 1".repeat(124)}`,
  `1${"?1:1".repeat(120)}`,
  "\u00a0",
  "",
  "//",
  "0x1F + 1u + 1e",
  "'\\ud800'",
  "joints",
  "widest",
];

/** Patterns that a backtracking engine never ends on, that need much memory, or are none. */
export const ODD_PATTERNS: readonly string[] = [
  "^(a+)+$",
  "^(([a-z])+.)+[A-Z]([a-z])+$",
  "(x+x+)+y",
  "((((a{1,100}){1,100}){1,100}){1,100})",
  "(a?){1000}a{1000}",
  "(?=a)b",
  "(a)\\1",
  "[",
  "(?<name>a)",
  "\\p{L}{1,999}",
  "a{99999}",
  "(?i)x",
  "\\",
];

/** A text cut, doubled, or with a character exchanged. */
export const bent = (random: Random, text: string): string => {
  const at = random.below(text.length + 1);
  const sign = random.pick([..."()+-*/?:.,'\"[]{}<>=!&|@#$ 0a\\~^", "\ud800", "\u0000"]);
  switch (random.below(4)) {
    case 0:
      return text.slice(0, at);
    case 1:
      return text.slice(0, at) + sign + text.slice(at);
    case 2:
      return text.slice(0, at) + sign + text.slice(at + 1);
    default:
      return text + text;
  }
};
