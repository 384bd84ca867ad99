import { splitAnswerName } from "../checklist/answer-name.ts";
import { isFailure } from "../formulas/engine-type.ts";
import { MEMBER } from "../shared/patterns.ts";
import type { RepeatJudgement } from "./judgement.ts";
import type { Judging } from "./judging.ts";
import type { Member, PreparedRepeat } from "./prepared.ts";

const IS_MEMBER = new RegExp(MEMBER);

const numbered = ({ each }: PreparedRepeat, count: number): readonly Member[] =>
  Array.from({ length: count }, (_, index) => ({
    id: String(index + 1),
    title: `${each} ${index + 1}`,
  }));

const NUMBER = /^\d+$/;

/** Numbers by size and before words: one order, whatever order the answers came in. */
function inOrder(a: string, b: string): number {
  const numbers = Number(NUMBER.test(b)) - Number(NUMBER.test(a));
  if (numbers !== 0) return numbers;
  return (NUMBER.test(a) && Number(a) - Number(b)) || (a < b ? -1 : 1);
}

/** Members that somebody answered for: shown and judged, though nobody knows how many there are. */
function answered({ each, points, atMost }: PreparedRepeat, answers: object): readonly Member[] {
  const own = new Set(points.map(({ id }) => id));
  const ids = new Set<string>();
  for (const name of Object.keys(answers)) {
    const { point, member } = splitAnswerName(name);
    if (member !== null && own.has(point) && IS_MEMBER.test(member)) ids.add(member);
  }
  const sorted = [...ids].sort(inOrder).slice(0, atMost);
  return sorted.map((id) => ({ id, title: `${each} ${id}` }));
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
