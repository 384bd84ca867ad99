import type { Failure } from "../formulas/engine-type.ts";
import type { Names } from "./expression.ts";
import type { Given } from "./given.ts";
import type { PointVerdict, RepeatJudgement } from "./judgement.ts";
import type { Days, PreparedPoint, PreparedRepeat } from "./prepared.ts";

/** True, false, or why it is not known; code `stopped` when a verdict on another point forbids it. */
export type Asked = boolean | Failure;

/** What the parts of the judge may ask of the judging under way. */
export interface Judging extends Names, Days {
  readonly input: { readonly answers: object };
  /** Whether a point is asked; a failure when that cannot be had. */
  asked(point: PreparedPoint): Asked;
  given(point: PreparedPoint): Given;
  /** What the last inspection found for a point; undefined where there was none or it found none. */
  last(point: PreparedPoint): Given | undefined;
  /** Verdicts on a point as seen from here: of a repeat elsewhere, those on each of its members. */
  verdictsOn(point: PreparedPoint): readonly PointVerdict[];
  members(repeat: PreparedRepeat): RepeatJudgement;
  /** The same judging seen from one member of a repeat. */
  forMember(repeat: PreparedRepeat, member: string): Judging;
}
