import { issueDocument } from "../checklist/issue-document.ts";
import { lintChecklist } from "../checklist/lint-checklist.ts";
import { type Checklist, DIALECT, JSON_SCHEMA_DRAFT } from "../checklist/meta-schema.ts";
import { validateAnswers } from "../checklist/validate-answers.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import type { PointJudgement } from "../judge/judgement.ts";
import { createPatternEngine } from "../patterns/index.ts";
import { LINT_CODES } from "../shared/codes/lint-codes.ts";
import type { Problem, Result } from "../shared/problem.ts";
import type { Case, CaseFile, ExpectedPoint, ExpectedProblem } from "./case.ts";

type Fields = Readonly<Record<string, unknown>>;
type Listed = readonly ExpectedProblem[];

/** What a case looks at, as it expects it and as it came out: equal when the case holds. */
export interface Outcome {
  readonly expected: Fields;
  readonly found: Fields;
}

const formulas = createFormulaEngine();
const patterns = createPatternEngine();

const inOrder = (problems: Listed): Listed =>
  problems.toSorted((a, b) => {
    const [one, other] = [`${a.pointer} ${a.code}`, `${b.pointer} ${b.code}`];
    return one < other ? -1 : one > other ? 1 : 0;
  });

const only = (names: Fields | undefined, found: Fields): Fields =>
  Object.fromEntries(Object.keys(names ?? {}).map((name) => [name, found[name]]));

/** The problems found, with the parameters that the one expected in the same place names. */
const listed = (found: readonly Problem[], expected: Listed): Listed =>
  inOrder(found).map(({ pointer, code, params = {} }, index) => {
    const named = expected[index]?.params;
    return { pointer, code, ...(named ? { params: only(named, params) } : {}) };
  });

/** A point as cases see it: the reason by its code, what only its deciding limit says beside it. */
const shown = (point: PointJudgement): Fields => {
  const decided = point.limits.find(({ why }) => why === point.why);
  const { acceptance, boundDate, conformity, working } = decided ?? {};
  const { code, params } = point.why;
  const limits = point.limits.map(({ verdict }) => verdict);
  return { ...params, ...point, limits, acceptance, boundDate, conformity, working, why: code };
};

const pointAs = (expected: ExpectedPoint, found: PointJudgement | undefined): unknown => {
  if (found === undefined) return undefined;
  if (typeof expected !== "object" || expected === null) return found.verdict;
  return only(expected, shown(found));
};

const eachAs = (
  expected: Readonly<Record<string, Fields>> | undefined,
  found: Readonly<Record<string, object>>,
): Fields =>
  Object.fromEntries(
    Object.entries(expected ?? {}).map(([name, fields]) => [
      name,
      only(fields, { ...found[name] } as Fields),
    ]),
  );

/** The whole document of a case, as a person would have written it.
 * @throws Error for a sheet that its file does not have. */
export const documentOf = (file: CaseFile, one: Case): unknown => {
  const sheet = one.checklist ?? file.sheets[one.sheet ?? ""];
  if (sheet === undefined) throw new Error(`no sheet ${one.sheet} in "${file.title}"`);
  const whole = {
    $schema: JSON_SCHEMA_DRAFT,
    dialect: DIALECT,
    title: "Case",
    type: "object",
    additionalProperties: false,
    ...sheet,
  };
  return Object.fromEntries(Object.entries(whole).filter(([name]) => !one.without?.includes(name)));
};

/** What the judge says, as far as the case looks at it. */
const judged = ({ expect, ...one }: Case, issued: Checklist): Fields => {
  const { particulars = {}, answers = {}, evidence, previous, on } = one;
  const judge = compileJudge(issued, formulas);
  const found = judge.judge({ particulars, answers, evidence, previous, on });
  const points = Object.entries(expect.points ?? {}).map(([name, point]) => {
    const has = Object.hasOwn(found.points, name);
    return [name, pointAs(point, has ? found.points[name] : undefined)];
  });
  return {
    ...found,
    points: Object.fromEntries(points),
    repeats: eachAs(expect.repeats, found.repeats),
    scores: eachAs(expect.scores, found.scores),
    problems: listed(found.problems, inOrder(expect.problems ?? [])),
  };
};

/**
 * Runs one case: linted, issued, and judged as issued. `parse` holds the document against the
 * meta-schema; without one, as in a browser, that is left out.
 */
export function runCase(
  file: CaseFile,
  one: Case,
  parse?: (value: unknown) => Result<Checklist>,
): Outcome {
  const { expect } = one;
  const document = documentOf(file, one);
  const parsed = parse?.(document);
  const misshapen = parsed?.ok === false ? parsed.problems : [];
  const shape = inOrder(expect.shape ?? []);
  const shapes = listed(misshapen, shape);
  if (misshapen.length > 0 || shape.length > 0)
    return { expected: { shape }, found: { shape: shapes } };

  const draft = document as Checklist;
  const told = lintChecklist(draft, formulas, patterns);
  const isError = ({ code }: Problem) => LINT_CODES[code]?.level !== "warning";
  // A document that has the shape of a checklist is looked at no further on that account.
  const { shape: _, ...further } = expect;
  const expected = {
    ...further,
    lint: inOrder(expect.lint ?? []),
    ...(expect.warn ? { warn: inOrder(expect.warn) } : {}),
  };
  const linted = {
    lint: listed(told.filter(isError), expected.lint),
    warn: listed(
      told.filter((found) => !isError(found)),
      expected.warn ?? [],
    ),
  };
  if (Object.keys(further).every((name) => name === "lint" || name === "warn"))
    return { expected, found: only(expected, linted) };

  const issued = issueDocument(draft);
  const invalid = inOrder(expect.invalid ?? []);
  const answered = {
    ...expected,
    invalid,
    ...(expect.problems ? { problems: inOrder(expect.problems) } : {}),
  };
  const all: Fields = {
    ...judged(one, issued),
    ...linted,
    invalid: listed(validateAnswers(issued, one.answers ?? {}, patterns), invalid),
  };
  return { expected: answered, found: only(answered, all) };
}
