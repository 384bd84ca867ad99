import {
  type Answers,
  at,
  canonicalize,
  compileJudge,
  type Evidence,
  type Explanation,
  type Judge,
  type Judgement,
  LINT_CODES,
  lintChecklist,
  type Particulars,
  type PointJudgement,
  type Problem,
  parseCivilDate,
  problem,
  type Result,
  usesFormulas,
} from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { createPatternEngine } from "@roundbook/schemas/patterns";
import { parseChecklist } from "@roundbook/schemas/validate";
import { say, sayProblem } from "../words/say.ts";
import { answerLines, bad, type Given, isObject, told } from "./answer-lines.ts";
import { readArguments } from "./arguments.ts";
import type { Verb } from "./io.ts";

const KEPT_JUDGES = 64;

interface Asked {
  readonly checklist: unknown;
  readonly particulars: Particulars;
  readonly answers: Answers;
  readonly on?: string;
  readonly previous?: Answers;
  readonly evidence?: Evidence;
}

function readAsked(line: Given): Result<Asked> {
  const { checklist, particulars = {}, answers, on, previous, evidence } = line;
  if (checklist === undefined) return bad(problem("", "missing-keyword", { keyword: "checklist" }));
  if (answers === undefined) return bad(problem("", "missing-keyword", { keyword: "answers" }));
  const given = { particulars, answers, evidence: evidence ?? {} };
  const wrong = Object.entries({ ...given, previous: previous ?? {} }).filter(
    ([, part]) => !isObject(part),
  );
  if (wrong.length > 0)
    return bad(
      ...wrong.map(([name]) => problem(at("", name), "wrong-type", { expected: ["object"] })),
    );
  const isDay = typeof on === "string" && parseCivilDate(on) !== undefined;
  if (on !== undefined && !isDay)
    return bad(problem("/on", "no-such-day", { date: typeof on === "string" ? on : null }));
  return { ok: true, value: { checklist, ...given, on, previous } as Asked };
}

/** Null for what nests too deep even to be written: it is refused when it is read. */
function keyOf(checklist: unknown): string | null {
  try {
    return JSON.stringify(checklist);
  } catch {
    return null;
  }
}

interface Ready {
  readonly judge: Judge;
  /** What would stand in the way of issuing the checklist; what hangs on it is undecided. */
  readonly problems: readonly Problem[];
}

/** Judges by the content of their checklist: a stream of inspections names few of them. */
function keptJudges(): (checklist: unknown) => Result<Ready> {
  const formulas = createFormulaEngine();
  const patterns = createPatternEngine();
  const kept = new Map<string, Result<Ready>>();
  const make = (checklist: unknown): Result<Ready> => {
    const parsed = parseChecklist(checklist);
    if (!parsed.ok) return bad(...inChecklist(parsed.problems));
    const engine = usesFormulas(parsed.value) ? formulas : undefined;
    const errors = lintChecklist(parsed.value, engine, patterns).filter(
      ({ code }) => LINT_CODES[code]?.level === "error",
    );
    const judge = compileJudge(parsed.value, engine);
    return { ok: true, value: { judge, problems: inChecklist(errors) } };
  };
  return (checklist) => {
    const key = keyOf(checklist);
    if (key === null) return make(checklist);
    const known = kept.get(key) ?? make(checklist);
    kept.delete(key);
    kept.set(key, known);
    for (const oldest of kept.keys()) {
      if (kept.size <= KEPT_JUDGES) break;
      kept.delete(oldest);
    }
    return known;
  };
}

const inChecklist = (problems: readonly Problem[]) =>
  problems.map((one) => ({ ...one, pointer: `/checklist${one.pointer}` }));

/** The sentence of the limit that decided carries the bound worked out with its numbers. */
function whyOf({ why, limits }: PointJudgement): string {
  const same = canonicalize(why);
  const working = limits.find((limit) => canonicalize(limit.why) === same)?.working;
  return say(worked(why, working));
}

const worked = ({ code, params }: Explanation, working: string | undefined): Explanation => ({
  code,
  params: { ...params, working: working ?? "" },
});

function worded(judgement: Judgement) {
  const points = Object.entries(judgement.points).map(([id, point]) => {
    const limits = point.limits.map((limit) => ({
      ...limit,
      why: say(worked(limit.why, limit.working)),
    }));
    return [id, { ...point, why: whyOf(point), because: point.why, limits }];
  });
  const scores = Object.entries(judgement.scores).map(([name, score]) => [
    name,
    { ...score, why: say(score.why), because: score.why },
  ]);
  return {
    ...judgement,
    points: Object.fromEntries(points),
    scores: Object.fromEntries(scores),
    problems: told(judgement.problems),
  };
}

/** A line nobody could judge: the same members as a judgement, and nothing that looks like a pass. */
const unjudged = (line: number, problems: readonly Problem[]) => ({
  overall: null,
  points: {},
  repeats: {},
  pending: [],
  scores: {},
  complete: false,
  problems: told(problems),
  line,
});

export const judge: Verb = {
  usage: "judge --json  < lines of {checklist, particulars, answers, on?, previous?, evidence?}",
  async run(args, io) {
    const plain = !readArguments(args, [], {}).values.json;
    const judgeFor = keptJudges();
    return answerLines(io, {
      answer(given) {
        const asked = readAsked(given);
        const found = asked.ok ? judgeFor(asked.value.checklist) : asked;
        if (!asked.ok || !found.ok) return found as Result<never>;
        const { judge, problems } = found.value;
        const judged = judge.judge(asked.value);
        const judgement = { ...judged, problems: [...problems, ...judged.problems] };
        return { ok: true, value: plain ? plainly(judgement) : JSON.stringify(worded(judgement)) };
      },
      refused: (line, problems) =>
        plain ? "not judged" : JSON.stringify(unjudged(line, problems)),
    });
  },
};

function plainly(judgement: Judgement): string {
  const points = Object.entries(judgement.points).map(
    ([id, point]) => `  ${id}: ${point.verdict ?? "no verdict"}: ${whyOf(point)}`,
  );
  const scores = Object.entries(judgement.scores).map(
    ([name, score]) => `  ${name}: ${score.verdict ?? "no verdict"}: ${say(score.why)}`,
  );
  const problems = judgement.problems.map((one) => `  ${sayProblem(one)}`);
  return [judgement.overall ?? "no verdict", ...points, ...scores, ...problems].join("\n");
}
