import { compileJudge, roundSignificant } from "@roundbook/schemas";
import { compileAnswers } from "@roundbook/schemas/validate";
import { rates } from "./measure.ts";
import { type Row, rateRow } from "./row.ts";
import { bareNumbers, NO_PARTICULARS, THIRTY_POINTS, thirtyAnswers } from "./thirty-points.ts";

const LEAST_RATIO = 0.4;

/** Judging against the least that has to be done, and against validating the same answers. */
export const benchJudging = (): Row[] => {
  const judge = compileJudge(THIRTY_POINTS);
  const validate = compileAnswers(THIRTY_POINTS);
  const answers = thirtyAnswers();
  const numbers = bareNumbers();
  let sink = 0;
  const bare = () => {
    for (const { value, min, max } of numbers) {
      const rounded = roundSignificant(value);
      if (rounded >= roundSignificant(min) && rounded <= roundSignificant(max)) sink += 1;
    }
  };
  const plain = () => {
    if (
      judge.judge({ particulars: NO_PARTICULARS, answers }, { explain: false }).overall !== "pass"
    )
      throw new Error("the bench's answers pass");
  };
  const explained = () => {
    sink += judge.judge({ particulars: NO_PARTICULARS, answers }).problems.length;
  };
  const ajv = () => {
    sink += validate(answers).length;
  };
  const [loop = 0, judged = 0, withWhy = 0, validated = 0] = rates([bare, plain, explained, ajv]);
  if (sink < 0) throw new Error("unreachable");
  return [
    {
      ...rateRow("judge 30 points", "bare loop, round and compare", judged, loop, "checklists"),
      target: `≥ ${LEAST_RATIO}`,
      met: judged / loop >= LEAST_RATIO,
    },
    rateRow("judge 30 points, explained", "bare loop", withWhy, loop, "checklists"),
    rateRow("judge 30 points", "Ajv validating the answers", judged, validated, "checklists"),
  ];
};
