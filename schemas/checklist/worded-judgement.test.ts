import fc from "fast-check";
import { expect, it } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { anyAnswers } from "../testing/any-answers.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { turned } from "../testing/turned.ts";
import type { Answers } from "./answer-types.ts";
import { worded } from "./worded.ts";

const DOCS = [EVERY_KIND, EXTENSION_LEAD, LEAVES_AND_SOCKETS];

/** A judgement without the texts it quotes. */
const withoutTexts = (judgement: unknown): unknown =>
  JSON.parse(
    JSON.stringify(judgement, (name, value) =>
      ["basis", "say", "title"].includes(name) ? undefined : value,
    ),
  );

it.each(DOCS.map((doc) => [doc.title, doc] as const))(
  "%s is judged the same in every language, whatever was answered",
  (_, doc) => {
    const engine = createFormulaEngine();
    const own = compileJudge(turned(doc), engine);
    const other = compileJudge(worded(turned(doc), "cy"), engine);
    const particulars = { sockets: 2, length: 10, csa: 1.5, class: "I", fitted: "2020-01-01" };
    fc.assert(
      fc.property(anyAnswers(doc), (given) => {
        const input = { particulars, answers: given as Answers, on: "2026-03-01" };
        expect(withoutTexts(other.judge(input))).toEqual(withoutTexts(own.judge(input)));
      }),
      { numRuns: 400, seed: 20_263 },
    );
  },
);
