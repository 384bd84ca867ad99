import { answerName, splitAnswerName } from "../checklist/answer-name.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import type { FormulaEngine } from "../formulas/engine-type.ts";
import { type Problem, problem } from "../shared/problem.ts";
import { findingsOf, strangers } from "./completeness.ts";
import { type Given, isUsable, own } from "./given.ts";
import { judgePoint } from "./judge-point.ts";
import { judgeScore } from "./judge-score.ts";
import type {
  Judgement,
  OverallVerdict,
  PointJudgement,
  PointVerdict,
  RepeatJudgement,
  ScoreJudgement,
  Verdict,
} from "./judgement.ts";
import type { Asked } from "./judging.ts";
import { prepare } from "./prepare.ts";
import type { Prepared, PreparedPoint } from "./prepared.ts";
import { type JudgeInput, Run } from "./run.ts";
import { GRAVITY } from "./tally.ts";

/** Version of the judging rules: a change of any verdict changes it. */
export const ENGINE = "2";

export interface JudgeOptions {
  /** False leaves out `limits` and gives every point the reason "not-explained"; quicker. */
  readonly explain?: boolean;
}

export interface Judge {
  judge(input: JudgeInput, options?: JudgeOptions): Judgement;
  /**
   * The verdict on one point while answers are typed, by name of the answer.
   * @throws RangeError for an unknown point.
   */
  judgePoint(name: string, input: JudgeInput): PointJudgement;
  /** The members of each repeat, by id of its group. */
  members(input: JudgeInput): Judgement["repeats"];
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
    // Worked out from particulars alone, a pass was found by nobody.
    const isFound = this.answered || this.#worst === "fail" || this.#worst === "undecided";
    if (this.#worst !== undefined) return isFound ? this.#worst : "not-evaluated";
    if (this.scored) return null;
    return judges || !this.answered ? "not-evaluated" : null;
  }
}

/** Whether a plain look-up finds own answers only, those names apart that every object inherits. */
const inheritsNothing = (answers: object): boolean => {
  const prototype: unknown = Object.getPrototypeOf(answers);
  return prototype === Object.prototype || prototype === null;
};

/**
 * Whether an answer makes a sheet begun: what is worked out was found by nobody, and what cannot be
 * used, or is absent for a reason that does not count, tells nothing.
 */
const tells = (point: PreparedPoint, given: Given): boolean =>
  point.calculate === undefined &&
  (isUsable(given) ||
    given.is === "pending" ||
    (given.is === "absent" && point.absentAllowed.includes(given.reason)));

/** Whether a point that is asked is neither answered nor absent for an allowed reason. */
const lacks = (point: PreparedPoint, asked: Asked, given: Given): boolean =>
  asked === true && !isUsable(given) && !tells(point, given);

/** The sheet under judgement, filled point by point. */
class Sheet {
  readonly #input: JudgeInput;
  readonly #explain: boolean;
  readonly #judges: boolean;
  readonly #isPlain: boolean;
  readonly overall = new Overall();
  readonly points: Record<string, PointJudgement>;
  readonly problems: Problem[] = [];
  readonly pending: string[] = [];
  complete = true;
  /** Answers that belong to a point. */
  known = 0;

  constructor(prepared: Prepared, input: JudgeInput, explain: boolean) {
    // A copy of an object with all its names is quicker than adding them one by one.
    this.points = { ...prepared.unjudged };
    this.#input = input;
    this.#isPlain = inheritsNothing(input.answers);
    this.#explain = explain;
    this.#judges = prepared.judges;
  }

  judge(run: Run, point: PreparedPoint, name: string): void {
    const { answers } = this.#input;
    // A plain look-up is quicker; where the name is every object's, it finds what nobody answered.
    const answer = this.#isPlain && !point.isInherited ? answers[name] : own(answers, name);
    if (answer !== undefined) this.known += 1;
    const asked = run.asked(point);
    const given = asked === true ? run.givenFrom(point, answer) : UNASKED;
    const judged = judgePoint(run, point, asked, given, this.#explain);
    this.points[name] = judged;
    if (!point.isGiven || judged.verdict !== "pass") this.overall.add(judged.verdict);
    if (tells(point, given)) this.overall.touched = true;
    if (given.is === "pending") this.pending.push(name);
    if (isUsable(given)) {
      if (point.calculate === undefined) this.overall.answered = true;
      if (point.evidence.length === 0 && point.calculate === undefined) return;
    }
    const { evidence } = this.#input;
    const isAnswered = answer !== undefined;
    for (const found of findingsOf(point, name, asked, given, judged.verdict, isAnswered, evidence))
      this.find(found.problem, found.blocks);
    // What had to be answered and is not leaves the whole open, limits or none.
    if (this.#judges && point.mandatory && lacks(point, asked, given))
      this.overall.add("undecided");
  }

  find(found: Problem, blocks: boolean): void {
    this.problems.push(found);
    if (blocks) this.complete = false;
  }
}

/** Each point of a repeat once per member; undecided as a whole where their number is not known. */
function judgeRepeats(prepared: Prepared, run: Run, sheet: Sheet): Judgement["repeats"] {
  const repeats: Record<string, RepeatJudgement> = {};
  for (const repeat of prepared.repeats) {
    const judged = run.members(repeat);
    repeats[repeat.id] = judged;
    for (const { id } of judged.members) {
      const member = run.forMember(repeat, id);
      for (const point of repeat.points) sheet.judge(member, point, answerName(point.id, id));
    }
    if (judged.why === null) continue;
    sheet.overall.add("undecided");
    const params = { repeat: repeat.id, cause: judged.why.code };
    sheet.find(problem("/answers", "repeat-undecided", params), true);
  }
  return repeats;
}

function judgeAll(prepared: Prepared, input: JudgeInput, explain: boolean): Judgement {
  const run = new Run(prepared, input);
  const sheet = new Sheet(prepared, input, explain);
  const { overall, points, problems, pending } = sheet;
  for (const point of prepared.single) sheet.judge(run, point, point.id);
  const repeats = prepared.repeats.length === 0 ? {} : judgeRepeats(prepared, run, sheet);
  if (Object.keys(input.answers).length > sheet.known)
    problems.unshift(...strangers(input.answers, prepared.byId, new Set(Object.keys(points)), run));
  // With nothing mandatory an empty sheet lacks nothing, and would move a due date all the same.
  if (sheet.complete && !overall.touched) sheet.find(problem("/answers", "nothing-answered"), true);
  const scores: Record<string, ScoreJudgement> = {};
  for (const [name, definition] of prepared.scores) {
    const judged = judgeScore(prepared, definition, run);
    scores[name] = judged;
    overall.add(judged.verdict);
    if (judged.score !== null) overall.scored = true;
  }
  // A sample without limits waits for its result all the same.
  if (pending.length > 0) overall.add("undecided");
  const verdict = overall.verdict(prepared.judges);
  const { complete } = sheet;
  return {
    overall: verdict,
    points,
    repeats,
    pending,
    scores,
    complete,
    problems,
    engine: ENGINE,
  };
}

/**
 * Prepares a checklist once for judging many inspections.
 * @throws Error when the checklist has formulas (`usesFormulas`) and no engine is given.
 */
export function compileJudge(doc: Checklist, formulas?: FormulaEngine): Judge {
  const prepared = prepare(doc, formulas);
  return {
    judge: (input, { explain = true } = {}) => judgeAll(prepared, input, explain),
    members(input) {
      const run = new Run(prepared, input);
      return Object.fromEntries(prepared.repeats.map((one) => [one.id, run.members(one)]));
    },
    judgePoint(name, input) {
      const { point: id, member } = splitAnswerName(name);
      const point = prepared.byId.get(id);
      if (point === undefined || (point.repeat === undefined) !== (member === null))
        throw new RangeError(`no point ${name} in this checklist`);
      const sheet = new Run(prepared, input);
      const run = point.repeat && member ? sheet.forMember(point.repeat, member) : sheet;
      const asked = run.asked(point);
      const given = asked === true ? run.given(point) : UNASKED;
      return judgePoint(run, point, asked, given, true);
    },
  };
}
