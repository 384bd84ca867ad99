/// <reference types="vite/types/importMeta.d.ts" />
import { expect, it } from "vitest";
import { issueDocument } from "../checklist/issue-document.ts";
import { compileAnswers } from "../validate/compile-answers.ts";
import { parseChecklist } from "../validate/parse-checklist.ts";
import { type Case, readCases } from "./case.ts";
import { documentOf, runCase } from "./run-case.ts";

const FILES = readCases(
  import.meta.glob<string>("./*.json", { query: "?raw", import: "default", eager: true }),
);
/** Those whose document has the shape of a checklist. */
const CASES = FILES.flatMap((file) =>
  file.cases.filter(({ expect }) => !expect.shape?.length).map((one) => ({ file, one })),
);

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** With the members of every object the other way round; lists stay as they are. */
const turned = <T>(value: T): T => {
  if (Array.isArray(value)) return value.map(turned) as T;
  if (!isFields(value)) return value;
  const members = Object.entries(value).map(([name, member]) => [name, turned(member)] as const);
  return Object.fromEntries(members.reverse()) as T;
};

const turnedCase = (one: Case): Case => ({
  ...one,
  particulars: turned(one.particulars),
  answers: turned(one.answers),
  evidence: turned(one.evidence),
  previous: turned(one.previous),
});

it("10.7 the order of members changes no case", () => {
  const differing = CASES.filter(({ file, one }) => {
    const [straight, other] = [runCase(file, one), runCase(file, turnedCase(one))];
    return JSON.stringify(straight.found) !== JSON.stringify(other.found);
  });
  expect(CASES.length).toBeGreaterThan(250);
  expect(differing.map(({ one }) => `${one.rule} ${one.name}`)).toEqual([]);
});

it("1.3 a validator that knows only JSON Schema tells well-formed answers as the cases do", () => {
  const compiled = new Map<string, ReturnType<typeof compileAnswers>>();
  const checkOf = (document: unknown) => {
    const text = JSON.stringify(document);
    const parsed = parseChecklist(document);
    if (!parsed.ok) throw new Error(`no checklist: ${text}`);
    const check = compiled.get(text) ?? compileAnswers(issueDocument(parsed.value));
    compiled.set(text, check);
    return check;
  };
  const ofAnswers = CASES.filter(({ one }) => one.rule.startsWith("2.") && one.answers);
  const differing = ofAnswers.filter(({ file, one }) => {
    const found = checkOf(documentOf(file, one))(one.answers).map(({ pointer }) => pointer);
    return (
      found.sort().join() !==
      (one.expect.invalid ?? [])
        .map(({ pointer }) => pointer)
        .sort()
        .join()
    );
  });
  expect(ofAnswers.length).toBeGreaterThan(100);
  expect(differing.map(({ one }) => `${one.rule} ${one.name}`)).toEqual([]);
});
