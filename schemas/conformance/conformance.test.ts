/// <reference types="vite/types/importMeta.d.ts" />
import { describe, expect, it } from "vitest";
import { parseChecklist } from "../validate/parse-checklist.ts";
import { type Case, readCases } from "./case.ts";
import { NOT_BY_CASE } from "./not-by-case.ts";
import { runCase } from "./run-case.ts";

const FILES = readCases(
  import.meta.glob<string>("./*.json", { query: "?raw", import: "default", eager: true }),
);
const [LANGUAGE = ""] = Object.values(
  import.meta.glob<string>("../LANGUAGE.md", { query: "?raw", import: "default", eager: true }),
);
/** By path from this folder; nothing of them is loaded. */
const TEST_FILES = Object.keys(
  import.meta.glob([
    "./*.test.ts",
    "../**/*.test.ts",
    "../../{tests,runner,server,designer}/**/*.test.{ts,tsx}",
  ]),
);

const titleOf = ({ rule, name }: Case) => `${rule} ${name}`;
const cases = FILES.flatMap((file) => file.cases);
const rules = [...LANGUAGE.matchAll(/^- \*\*(\d+\.\d+)\*\*/gm)].flatMap(([, rule]) => rule ?? []);

const SECTIONS = [...new Set(rules.map((rule) => rule.split(".")[0]))];
const COUNTS = SECTIONS.map((section) => {
  const own = cases.filter(({ rule }) => rule.split(".")[0] === section);
  return `section ${section}: ${own.length}`;
}).join(", ");

describe.each(FILES)("$title", (file) => {
  it.each(file.cases.map((one) => [titleOf(one), one] as const))("%s", (_, one) => {
    const { expected, found } = runCase(file, one, parseChecklist);
    expect(found).toEqual(expected);
  });
});

describe("the cases as a whole", () => {
  it("every rule has a case, or a test file that holds it", () => {
    const held = new Set([...cases.map(({ rule }) => rule), ...Object.keys(NOT_BY_CASE)]);
    expect(rules.length).toBeGreaterThan(80);
    expect(rules.filter((rule) => !held.has(rule))).toEqual([]);
    expect(Object.values(NOT_BY_CASE).filter((path) => !TEST_FILES.includes(path))).toEqual([]);
  });

  it("every case is of a rule that exists, and no two have one name", () => {
    const known = new Set(rules);
    const named = [...cases.map(({ rule }) => rule), ...Object.keys(NOT_BY_CASE)];
    expect(named.filter((rule) => !known.has(rule))).toEqual([]);
    const titles = cases.map(titleOf);
    expect(titles.filter((title, index) => titles.indexOf(title) !== index)).toEqual([]);
  });

  it("every case expects something", () => {
    expect(cases.filter((one) => Object.keys(one.expect).length === 0)).toEqual([]);
  });

  it(`there are at least 300 of them: ${COUNTS}`, () => {
    expect(cases.length).toBeGreaterThanOrEqual(300);
  });
});
