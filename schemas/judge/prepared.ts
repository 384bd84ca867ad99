import type { AbsenceReason, PointKind } from "../checklist/answer-types.ts";
import type {
  AskDefinition,
  DecisionRule,
  ParticularDefinition,
  ScoreDefinition,
} from "../checklist/meta-schema.ts";
import type { Combination } from "../checklist/point-schema.ts";
import type { Failure } from "../formulas/engine-type.ts";
import type { NumberBound } from "./compare.ts";
import type { Expression, Names } from "./expression.ts";
import type { ReadAnswer } from "./given.ts";
import type { PointJudgement } from "./judgement.ts";

/** What a bound on a date may ask of the judging under way, in days since 1970-01-01. */
export interface Days {
  day(name: string): number | Failure;
}

/** A bound on a number. */
export interface NumericBound {
  readonly kind: NumberBound;
  /** The number where no run is needed, rounded. */
  readonly fixed: number | undefined;
  readonly of: Expression;
}

export interface AcceptBound {
  readonly kind: "accept";
  readonly fixed?: undefined;
  readonly accepted: ReadonlySet<unknown>;
  readonly accept: readonly string[];
}

export type PreparedBound =
  | NumericBound
  | AcceptBound
  | { readonly kind: "notBefore" | "notAfter"; day(run: Days): number | Failure }
  | {
      readonly kind: "sameAsLast";
      /** In steps of the point's unit: K where the reading is in Cel. */
      readonly within: Expression;
      readonly whenNone: "undecided" | "not-applied";
    };

export interface PreparedDecision {
  readonly rule: Exclude<DecisionRule, "simple">;
  readonly uncertainty: Expression | undefined;
  readonly factor: number;
}

export interface PreparedLimit {
  readonly index: number;
  readonly severity: "fail" | "advisory";
  readonly when: Expression | undefined;
  readonly bounds: readonly PreparedBound[];
  /** Absent for the simple rule. */
  readonly decision: PreparedDecision | undefined;
  readonly basis: string | undefined;
}

/** Verdicts on some points that keep another from being asked. */
export interface PreparedStop {
  readonly after: readonly PreparedPoint[];
  readonly on: ReadonlySet<unknown>;
  readonly say: string;
}

export interface PreparedPoint {
  readonly id: string;
  /** Whether every object has something by this name, as by `constructor`. */
  readonly isInherited: boolean;
  readonly kind: PointKind;
  readonly unit: string | null;
  readonly maximum: number | undefined;
  readonly read: ReadAnswer;
  readonly calculate: Expression | undefined;
  /** Of a calculated point: that it comes from no answer, so that its pass is nobody's finding. */
  readonly isGiven: boolean;
  readonly several:
    | { readonly count: (run: Names) => number | Failure; readonly combine: Combination }
    | undefined;
  readonly when: Expression | undefined;
  readonly stops: readonly PreparedStop[];
  /** The group that asks this point once per member. */
  readonly repeat: PreparedRepeat | undefined;
  readonly mandatory: boolean;
  readonly absentAllowed: readonly AbsenceReason[];
  readonly evidence: NonNullable<AskDefinition["evidence"]>;
  readonly limits: readonly PreparedLimit[];
}

export interface Member {
  readonly id: string;
  readonly title: string;
}

export interface PreparedRepeat {
  readonly id: string;
  readonly each: string;
  readonly points: readonly PreparedPoint[];
  /** The members where they are named; else how many there are comes from `count`. */
  readonly named: readonly Member[] | undefined;
  readonly count: ((run: Names) => number | Failure) | undefined;
  /** Whether it may have a member of this id, however many there are. */
  allows(member: string): boolean;
}

export interface Prepared {
  /** In the document's order, those of repeats among them. */
  readonly points: readonly PreparedPoint[];
  /** Points asked once. */
  readonly single: readonly PreparedPoint[];
  /** Of each of these points that it is not judged yet. */
  readonly unjudged: Readonly<Record<string, PointJudgement>>;
  readonly repeats: readonly PreparedRepeat[];
  readonly byId: ReadonlyMap<string, PreparedPoint>;
  readonly particulars: ReadonlyMap<string, ParticularDefinition>;
  readonly values: ReadonlyMap<string, Expression>;
  /** Points of long chains of formulas, each after those it needs. */
  readonly neededFirst: readonly string[];
  readonly scores: readonly (readonly [string, ScoreDefinition])[];
  /** Whether there is anything to judge by. */
  readonly judges: boolean;
}
