import { expect } from "vitest";
import { issueDocument } from "../checklist/issue-document.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import { translatableTexts } from "../checklist/texts.ts";
import { validateAnswers } from "../checklist/validate-answers.ts";
import { worded } from "../checklist/worded.ts";
import { createPatternEngine } from "../patterns/index.ts";
import { parseChecklist } from "../validate/index.ts";
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
  for (const malformed of [false, true]) {
    const answers = frozen(randomAnswers(random, doc, malformed));
    expectPlaces(validateAnswers(issued, answers, patterns), answers);
  }
  expectJudged(random, issued);
};
