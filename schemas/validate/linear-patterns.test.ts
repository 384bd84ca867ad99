import { afterEach, expect, it, vi } from "vitest";
import type { Checklist } from "../checklist/meta-schema.ts";
import { validateAnswers } from "../checklist/validate-answers.ts";
import { createPatternEngine } from "../patterns/index.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { compileAnswers } from "./index.ts";

const patterns = createPatternEngine();
const withPattern = (pattern: string): Checklist => ({
  ...EVERY_KIND,
  properties: {
    ...EVERY_KIND.properties,
    tag: { $ref: "#/$defs/text", title: "Tag", pattern },
    seal: { $ref: "#/$defs/text", title: "Seal", pattern: "^S" },
  },
});
const evil = `${"a".repeat(3900)}!`;

afterEach(() => {
  vi.restoreAllMocks();
});

it("patterns of a document never run in the engine of the platform, which may take ages", () => {
  const compiled = compileAnswers(withPattern("(a+)+$"));
  const exec = vi.spyOn(RegExp.prototype, "exec");
  const test = vi.spyOn(RegExp.prototype, "test");
  const problems = compiled({ tag: evil });
  const ran = [...exec.mock.contexts, ...test.mock.contexts].map(String);
  vi.restoreAllMocks();
  expect(problems).toMatchObject([{ pointer: "/tag", code: "answer-shape" }]);
  expect(ran.filter((regExp) => regExp.includes("a+"))).toEqual([]);
});

it("two patterns of one document are told apart, and bind texts only", () => {
  const doc = withPattern("^[A-Z]{2}$");
  const compiled = compileAnswers(doc);
  const commit = { commit: "0".repeat(64) };
  for (const [answers, pointers] of [
    [{ tag: "AB", seal: "S1" }, []],
    [{ tag: "S1", seal: "AB" }, ["/tag", "/seal"]],
    [{ tag: commit, seal: { absent: { reason: "no-access" } } }, []],
  ] as const) {
    expect(compiled(answers).map(({ pointer }) => pointer)).toEqual(pointers);
    const told = validateAnswers(doc, answers, patterns);
    expect(told.map(({ pointer, code }) => [pointer, code])).toEqual(
      pointers.map((pointer) => [pointer, "answer-pattern"]),
    );
  }
  expect(validateAnswers(doc, { tag: "S1" })).toEqual([]);
});

it("a pattern that lint refuses is never compiled", () => {
  expect(() => compileAnswers(withPattern("(a)\\1"))).toThrow("no pattern that can be run");
});

it("a day that no month has is no date, interpreted and compiled", () => {
  const doc: Checklist = {
    ...EVERY_KIND,
    properties: { day: { $ref: "#/$defs/date", title: "Day" } },
    groups: [],
    scores: {},
  };
  const compiled = compileAnswers(doc);
  for (const day of ["2026-02-28", "2024-02-29"]) expect(compiled({ day })).toEqual([]);
  for (const day of ["2026-02-29", "2026-04-31"]) {
    const problem = { pointer: "/day", code: "answer-no-such-day", params: { answer: day } };
    expect(compiled({ day })).toEqual([problem]);
    expect(validateAnswers(doc, { day })).toEqual([problem]);
  }
});
