import { splitAnswerName } from "../checklist/answer-name.ts";
import { isFailure } from "../formulas/engine-type.ts";
import type { RepeatJudgement } from "./judgement.ts";
import type { Judging } from "./judging.ts";
import type { Member, PreparedRepeat } from "./prepared.ts";

const numbered = ({ each }: PreparedRepeat, count: number): readonly Member[] =>
  Array.from({ length: count }, (_, index) => ({
    id: String(index + 1),
    title: `${each} ${index + 1}`,
  }));

/** Members that somebody answered for: shown and judged, though nobody knows how many there are. */
function answered({ each, points, allows }: PreparedRepeat, answers: object): readonly Member[] {
  const own = new Set(points.map(({ id }) => id));
  const ids = new Set<number>();
  for (const name of Object.keys(answers)) {
    const { point, member } = splitAnswerName(name);
    if (member !== null && own.has(point) && allows(member)) ids.add(Number(member));
  }
  // One order, whatever order the answers came in.
  return [...ids].sort((a, b) => a - b).map((id) => ({ id: String(id), title: `${each} ${id}` }));
}

/** The members of a repeat: those it names, or as many as it comes to, by number. */
export function membersOf(repeat: PreparedRepeat, run: Judging): RepeatJudgement {
  const { named, count } = repeat;
  if (named !== undefined) return { expected: named.length, members: named, why: null };
  const expected = count?.(run) ?? 0;
  return isFailure(expected)
    ? { expected: null, members: answered(repeat, run.input.answers), why: expected }
    : { expected, members: numbered(repeat, expected), why: null };
}
