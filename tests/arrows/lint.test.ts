import { afterAll, beforeAll, expect, it } from "vitest";
import { type Planted, plant } from "./planted.ts";

// what stands in a file of schemas, and the lint rule that refuses it
const IMPURE: [string, string][] = [
  ["Date.now()", "noRestrictedGlobals"],
  ["new Date()", "noRestrictedGlobals"],
  ["new Intl.NumberFormat()", "noRestrictedGlobals"],
  ["globalThis.Date", "noRestrictedGlobals"],
  ["performance.now()", "noRestrictedGlobals"],
  ["setTimeout(() => 1, 1)", "noRestrictedGlobals"],
  ["crypto.randomUUID()", "noRestrictedGlobals"],
  ["process.env", "noRestrictedGlobals"],
  ['fetch("/")', "noRestrictedGlobals"],
  ['console.log("x")', "noRestrictedGlobals"],
  ["Math.random()", "noJsRestrictedProperties"],
  ["(1).toLocaleString()", "noJsRestrictedProperties"],
  ['"a".toLocaleLowerCase()', "noJsRestrictedProperties"],
  ['"a".localeCompare("b")', "noJsRestrictedProperties"],
];

// file, its text, the lint rule that refuses it
const UNTIDY: [string, string, string][] = [
  ["server/any.ts", "export const loose: any = 1;\n", "noExplicitAny"],
  ["server/ignored.ts", "// @ts-ignore\nexport const loose = 1;\n", "noTsIgnore"],
  ["server/idle.ts", 'import { hidden } from "./any.ts";\n', "noUnusedImports"],
  ["server/fallback.ts", "export default 1;\n", "noDefaultExport"],
  ["server/camelCase.ts", "export const x = 1;\n", "useFilenamingConvention"],
  ["server/long.ts", "export {};\n".repeat(301), "noExcessiveLinesPerFile"],
  ["server/only.test.ts", 'it.only("x", () => expect(1).toBe(1));\n', "noFocusedTests"],
  ["server/skip.test.ts", 'it.skip("x", () => expect(1).toBe(1));\n', "noSkippedTests"],
  ["server/bare.test.ts", 'it("x", () => {});\n', "useExpect"],
  ["server/format.ts", "export const x   = 1\n", "format"],
  [
    "runner/html.tsx",
    'export const X = () => <p dangerouslySetInnerHTML={{ __html: "" }} />;\n',
    "noDangerouslySetInnerHtml",
  ],
  ["runner/log.ts", 'console.log("x");\n', "noConsole"],
];

const impureFile = (index: number) => `schemas/judge/impure-${index}.ts`;

let planted: Planted;
let found: string[];

beforeAll(() => {
  planted = plant({
    ...Object.fromEntries(
      IMPURE.map(([text], i) => [impureFile(i), `export const x = ${text};\n`]),
    ),
    ...Object.fromEntries(UNTIDY.map(([file, text]) => [file, text])),
    "schemas/judge/oracle.test.ts": "export const now = Date.now();\n",
    "server/clock.ts": "export const now = Date.now();\n",
  });
  const { output } = planted.run("@biomejs/biome/bin/biome", [
    "check",
    "--error-on-warnings",
    "--max-diagnostics=none",
    "--reporter=github",
    ".",
  ]);
  found = output.split("\n").filter((line) => line.startsWith("::"));
});

afterAll(() => planted.remove());

const against = (file: string) => found.filter((line) => line.includes(`/${file},`)).join("\n");

it.each(IMPURE)("schemas refuses %s", (text, rule) => {
  expect(against(impureFile(IMPURE.findIndex(([other]) => other === text)))).toContain(rule);
});

it.each(UNTIDY)("%s is refused", (file, _text, rule) => {
  expect(against(file)).toContain(rule);
});

it("the clock is refused in schemas only, and its tests may use oracles", () => {
  expect(against("server/clock.ts")).toBe("");
  expect(against("schemas/judge/oracle.test.ts")).not.toContain("noRestrictedGlobals");
});
