import { expect } from "vitest";
import { issueDocument } from "../checklist/issue-document.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import { translatableTexts } from "../checklist/texts.ts";
import { validateAnswers } from "../checklist/validate-answers.ts";
import { worded } from "../checklist/worded.ts";
import { createPatternEngine } from "../patterns/index.ts";
import { compileAnswers, parseChecklist } from "../validate/index.ts";
import { randomAnswers } from "./answers.ts";
import { expectPlaces, frozen } from "./expectations.ts";
import { expectJudged } from "./judged.ts";
import { resolves } from "./pointer.ts";
import type { Random } from "./random.ts";

const patterns = createPatternEngine();

/** A document without errors is issued as a document again, worded, and its answers are checked. */
export const expectIssued = (random: Random, doc: Checklist): void => {
  const issued = frozen(issueDocument(doc));
  expect(parseChecklist(issued).ok).toBe(true);
  const lost = translatableTexts(issued).filter(({ pointer }) => !resolves(issued, pointer));
  expect(lost).toEqual([]);
  expect(Object.keys(worded(issued, "cy"))).toEqual(Object.keys(issued));
  // Compiling takes Ajv longer than all the rest together: one document in ten.
  const compiled = random.below(10) === 0 ? compileAnswers(issued) : undefined;
  for (const malformed of [false, true]) {
    const answers = frozen(randomAnswers(random, doc, malformed));
    const found = validateAnswers(issued, answers, patterns);
    expectPlaces(found, answers);
    if (compiled) expect(compiled(answers).length > 0).toBe(found.length > 0);
  }
  expectJudged(random, issued);
};
