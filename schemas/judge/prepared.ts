import type { AbsenceReason, PointKind } from "../checklist/answer-types.ts";
import { pointKind } from "../checklist/guards.ts";
import type {
  AskDefinition,
  Checklist,
  ParticularDefinition,
  PointDefinition,
  ScoreDefinition,
} from "../checklist/meta-schema.ts";
import { checklistNames } from "../checklist/names.ts";
import type { FormulaEngine, NameTypes } from "../formulas/engine-type.ts";
import { roundSignificant } from "../shared/significant.ts";
import type { NumberBound } from "./compare.ts";
import { Compiler, convertedTo, type Expression, unitNamed } from "./expression.ts";
import { answerReader, type ReadAnswer } from "./given.ts";

export type PreparedBound =
  | { readonly kind: NumberBound; readonly fixed: number | undefined; readonly of: Expression }
  | {
      readonly kind: "accept";
      readonly fixed?: undefined;
      readonly accepted: ReadonlySet<unknown>;
      readonly accept: readonly string[];
    };

export interface PreparedLimit {
  readonly index: number;
  readonly severity: "fail" | "advisory";
  readonly when: Expression | undefined;
  readonly bounds: readonly PreparedBound[];
  readonly basis: string | undefined;
}

export interface PreparedPoint {
  readonly id: string;
  readonly kind: PointKind;
  readonly unit: string | null;
  readonly maximum: number | undefined;
  readonly read: ReadAnswer;
  readonly when: Expression | undefined;
  readonly mandatory: boolean;
  readonly absentAllowed: readonly AbsenceReason[];
  readonly evidence: NonNullable<AskDefinition["evidence"]>;
  readonly limits: readonly PreparedLimit[];
}

export interface Prepared {
  readonly points: readonly PreparedPoint[];
  readonly byId: ReadonlyMap<string, PreparedPoint>;
  readonly particulars: ReadonlyMap<string, ParticularDefinition>;
  readonly values: ReadonlyMap<string, Expression>;
  readonly scores: readonly (readonly [string, ScoreDefinition])[];
  /** Whether there is anything to judge by. */
  readonly judges: boolean;
}

const NUMBER_BOUNDS = ["min", "exclusiveMin", "max", "exclusiveMax"] as const;

class Preparing {
  readonly values = new Map<string, Expression>();
  readonly #names: NameTypes;
  readonly #compiler: Compiler;

  constructor(doc: Checklist, engine: FormulaEngine | undefined) {
    this.#names = checklistNames(doc, engine).types;
    this.#compiler = new Compiler(engine, this.#names);
    for (const [name, value] of Object.entries(doc.values ?? {}))
      this.values.set(name, this.#compiler.value(value));
  }

  #bound(kind: NumberBound, bound: number | string, unit: string): PreparedBound {
    if (typeof bound === "number")
      return { kind, fixed: roundSignificant(bound), of: { source: "", evaluate: () => bound } };
    const value = this.values.get(bound);
    const to = unitNamed(unit);
    if (value === undefined)
      return {
        kind,
        fixed: undefined,
        of: this.#compiler.formula(bound, to),
      };
    const named: Expression =
      value.constant === undefined
        ? { ...value, source: bound, evaluate: (run) => run.value(bound) }
        : value;
    const of = convertedTo(named, this.#names.get(bound)?.unit, to);
    return {
      kind,
      fixed: of.constant === undefined ? undefined : roundSignificant(of.constant),
      of,
    };
  }

  #limits({ limits = [], quantity }: PointDefinition): readonly PreparedLimit[] {
    return limits.map((limit, index) => {
      const bounds: PreparedBound[] = NUMBER_BOUNDS.flatMap((kind) => {
        const bound = limit[kind];
        // A grade is a plain number: a bound in ohms says nothing of it.
        return bound === undefined ? [] : [this.#bound(kind, bound, quantity?.unit ?? "1")];
      });
      if (limit.accept !== undefined)
        bounds.push({
          kind: "accept",
          accepted: new Set<unknown>(limit.accept),
          accept: limit.accept.map(String),
        });
      return {
        index,
        severity: limit.severity ?? "fail",
        when: limit.when === undefined ? undefined : this.#compiler.formula(limit.when),
        bounds,
        basis: limit.basis,
      };
    });
  }

  point(id: string, point: PointDefinition): PreparedPoint {
    const { ask = {} } = point;
    const kind = pointKind(point);
    return {
      id,
      kind,
      unit: point.quantity?.unit ?? null,
      maximum: point.maximum,
      read: answerReader(point, kind),
      when: ask.when === undefined ? undefined : this.#compiler.formula(ask.when),
      mandatory: ask.mandatory === true,
      absentAllowed: ask.absentAllowed ?? [],
      evidence: ask.evidence ?? [],
      limits: this.#limits(point),
    };
  }
}

/** Everything about a checklist that no answer changes, worked out once. */
export function prepare(doc: Checklist, engine: FormulaEngine | undefined): Prepared {
  const preparing = new Preparing(doc, engine);
  const points = Object.entries(doc.properties).map(([id, point]) => preparing.point(id, point));
  const scores = Object.entries(doc.scores ?? {});
  return {
    points,
    byId: new Map(points.map((point) => [point.id, point])),
    particulars: new Map(Object.entries(doc.particulars ?? {})),
    values: preparing.values,
    scores,
    judges: scores.length > 0 || points.some((point) => point.limits.length > 0),
  };
}
