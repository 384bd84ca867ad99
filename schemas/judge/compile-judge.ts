import type { Checklist } from "../checklist/meta-schema.ts";
import type { FormulaEngine } from "../formulas/engine-type.ts";
import { type Problem, problem } from "../shared/problem.ts";
import { findingsOf, strangers } from "./completeness.ts";
import { type Given, own } from "./given.ts";
import { judgePoint } from "./judge-point.ts";
import { judgeScore } from "./judge-score.ts";
import type {
  Judgement,
  OverallVerdict,
  PointJudgement,
  PointVerdict,
  ScoreJudgement,
  Verdict,
} from "./judgement.ts";
import { type Prepared, prepare } from "./prepared.ts";
import { type JudgeInput, Run } from "./run.ts";
import { GRAVITY } from "./tally.ts";

/** Version of the judging rules: a change of any verdict changes it. */
export const ENGINE = "1";

export interface JudgeOptions {
  /** False leaves out `limits` and gives every point the reason "not-explained"; quicker. */
  readonly explain?: boolean;
}

export interface Judge {
  judge(input: JudgeInput, options?: JudgeOptions): Judgement;
  /** The verdict on one point while answers are typed. @throws RangeError for an unknown point. */
  judgePoint(id: string, input: JudgeInput): PointJudgement;
}

const UNASKED: Given = { is: "missing" };

const counts = (verdict: PointVerdict | ScoreJudgement["verdict"]): verdict is Verdict =>
  verdict !== null && verdict !== "not-counted" && verdict !== "not-evaluated";

/** The gravest of everything counted. */
class Overall {
  #worst: Verdict | undefined;
  answered = false;
  /** Whether any point has an answer at all, be it an absence. */
  touched = false;
  scored = false;

  add(verdict: PointVerdict | ScoreJudgement["verdict"]): void {
    if (counts(verdict) && (this.#worst === undefined || GRAVITY[verdict] > GRAVITY[this.#worst]))
      this.#worst = verdict;
  }

  verdict(judges: boolean): OverallVerdict {
    if (this.#worst !== undefined) return this.#worst;
    if (this.scored) return null;
    return judges || !this.answered ? "not-evaluated" : null;
  }
}

const usable = ({ is }: Given): boolean => is === "number" || is === "word" || is === "content";

function judgeAll(prepared: Prepared, input: JudgeInput, explain: boolean): Judgement {
  const run = new Run(prepared, input);
  const overall = new Overall();
  const points: Record<string, PointJudgement> = {};
  const scores: Record<string, ScoreJudgement> = {};
  const problems: Problem[] = [];
  let complete = true;
  let known = 0;
  for (const point of prepared.points) {
    const answer = own(input.answers, point.id);
    if (answer !== undefined) known += 1;
    const asked = run.asked(point);
    const given = asked === true ? point.read(answer) : UNASKED;
    const judged = judgePoint(run, point, asked, given, explain);
    points[point.id] = judged;
    overall.add(judged.verdict);
    if (given.is !== "missing") overall.touched = true;
    if (usable(given)) {
      overall.answered = true;
      if (point.evidence.length === 0) continue;
    }
    for (const found of findingsOf(point, asked, given, judged.verdict, input.evidence)) {
      problems.push(found.problem);
      if (found.blocks) complete = false;
    }
  }
  if (Object.keys(input.answers).length > known)
    problems.unshift(...strangers(input.answers, prepared.byId));
  // With nothing mandatory an empty sheet lacks nothing, and would move a due date all the same.
  if (complete && !overall.touched) {
    problems.push(problem("/answers", "nothing-answered"));
    complete = false;
  }
  for (const [name, definition] of prepared.scores) {
    const judged = judgeScore(prepared, definition, run);
    scores[name] = judged;
    overall.add(judged.verdict);
    if (judged.score !== null) overall.scored = true;
  }
  const verdict = overall.verdict(prepared.judges);
  return { overall: verdict, points, scores, complete, problems, engine: ENGINE };
}

/**
 * Prepares a checklist once for judging many inspections.
 * @throws Error when the checklist has formulas (`usesFormulas`) and no engine is given.
 */
export function compileJudge(doc: Checklist, formulas?: FormulaEngine): Judge {
  const prepared = prepare(doc, formulas);
  return {
    judge: (input, { explain = true } = {}) => judgeAll(prepared, input, explain),
    judgePoint(id, input) {
      const point = prepared.byId.get(id);
      if (point === undefined) throw new RangeError(`no point ${id} in this checklist`);
      const run = new Run(prepared, input);
      const asked = run.asked(point);
      const given = asked === true ? run.given(point) : UNASKED;
      return judgePoint(run, point, asked, given, true);
    },
  };
}
