import { expect } from "vitest";
import { splitAnswerName } from "../checklist/answer-name.ts";
import { pointKind } from "../checklist/guards.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import type { Judgement } from "../judge/judgement.ts";
import { randomAnswers, randomParticulars } from "./answers.ts";
import { frozen } from "./expectations.ts";
import type { Random } from "./random.ts";

const engine = createFormulaEngine();
const ON = "2026-03-01";

/** Points that pass although nobody answered them; what is worked out needs no answer of its own. */
const passedUnanswered = (doc: Checklist, answers: object, { points }: Judgement): string[] =>
  Object.entries(points).flatMap(([name, { verdict }]) => {
    const definition = doc.properties[splitAnswerName(name).point];
    const isWorkedOut = definition && pointKind(definition) === "calculated";
    return verdict === "pass" && !isWorkedOut && !Object.hasOwn(answers, name) ? [name] : [];
  });

/** Without an answer nothing is a pass; with whatever answers, judging ends in a judgement. */
export const expectJudged = (random: Random, issued: Checklist): void => {
  const judge = compileJudge(issued, engine);
  const particulars = randomParticulars(random, issued);
  const empty = judge.judge({ particulars, answers: {}, on: ON });
  expect(["not-evaluated", "undecided"]).toContain(empty.overall);
  expect(empty.complete).toBe(false);
  for (const malformed of [false, true]) {
    const answers = frozen(randomAnswers(random, issued, malformed));
    const previous = frozen(randomAnswers(random, issued, malformed));
    const judgement = judge.judge({ particulars, answers, on: ON, previous });
    expect(passedUnanswered(issued, answers, judgement)).toEqual([]);
    expect(judgement.problems.filter(({ pointer }) => !/^(\/|$)/.test(pointer))).toEqual([]);
    const quick = judge.judge({ particulars, answers, on: ON, previous }, { explain: false });
    expect(quick.overall).toBe(judgement.overall);
  }
};
