import {
  type Answers,
  answerName,
  type Explanation,
  isReading,
  isSample,
  type Judgement,
  type Problem,
  splitAnswerName,
} from "@roundbook/schemas";

/** "missing" of an answer that is there, or that nobody is asked for, said as what it is. */
const REASONS = { censored: "operand-censored", "not-asked": "operand-not-asked" } as const;

/** What keeps an answer from being worked with, where it is not simply missing. */
function reasonOf(
  { points }: Pick<Judgement, "points">,
  answers: Answers,
  name: string,
): keyof typeof REASONS | undefined {
  if (points[name]?.asked === false) return "not-asked";
  const given = Object.hasOwn(answers, name) ? answers[name] : undefined;
  const one = isSample(given) ? given.result : given;
  return isReading(one) && one.comparator !== undefined ? "censored" : undefined;
}

/**
 * A judgement whose calculations say why an answer could not be worked with: a person who has given
 * it, or cannot give it, is not sent to look for it. For showing only.
 */
export function withOperandReasons(judgement: Judgement, answers: Answers): Judgement {
  const said = <T extends Explanation>(what: T, of: string): T => {
    const { name } = what.params;
    if (what.code !== "missing" || typeof name !== "string" || !name.startsWith("answers."))
      return what;
    const point = name.slice("answers.".length);
    // In a repeat an answer is the same member's, where it has one of its own.
    const own = answerName(point, splitAnswerName(of).member);
    const reason = reasonOf(judgement, answers, own in judgement.points ? own : point);
    return reason === undefined ? what : { ...what, code: REASONS[reason] };
  };
  const problem = (one: Problem): Problem => said(one, one.pointer.slice("/answers/".length));
  return {
    ...judgement,
    points: Object.fromEntries(
      Object.entries(judgement.points).map(([name, judged]) => [
        name,
        judged.why.code === "missing" ? { ...judged, why: said(judged.why, name) } : judged,
      ]),
    ),
    problems: judgement.problems.map(problem),
  };
}
