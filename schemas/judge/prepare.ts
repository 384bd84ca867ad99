import { answeredBehind } from "../checklist/answered-behind.ts";
import { pointKind } from "../checklist/guards.ts";
import type { Checklist, PointDefinition, StopDefinition } from "../checklist/meta-schema.ts";
import { checklistNames } from "../checklist/names.ts";
import { allowsMember, MOST_MEMBERS } from "../checklist/repeats.ts";
import { type Failure, type FormulaEngine, failure, isFailure } from "../formulas/engine-type.ts";
import { Compiler, type Expression, type Names, numberOf, unitNamed } from "./expression.ts";
import { NOT_ANSWERED } from "./judge-point.ts";
import { neededFirst } from "./needed-first.ts";
import { LimitPreparer } from "./prepare-limits.ts";
import type { Prepared, PreparedPoint, PreparedRepeat, PreparedStop } from "./prepared.ts";
import { answerReader } from "./read-answer.ts";

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };
type Group = NonNullable<Checklist["groups"]>[number];

/** How many there must be: a whole number, or a failure that says why there is none. */
function wholeNumber(expression: Expression, atMost: number): (run: Names) => number | Failure {
  return (run) => {
    const count = numberOf(expression, run);
    if (isFailure(count)) return count;
    return Number.isInteger(count) && count >= 1 && count <= atMost
      ? count
      : failure("count-not-right", { count, atMost });
  };
}

class Preparing {
  readonly values = new Map<string, Expression>();
  readonly #compiler: Compiler;
  readonly #limits: LimitPreparer;
  readonly #answered: ReadonlySet<string>;

  constructor(doc: Checklist, engine: FormulaEngine | undefined) {
    const names = checklistNames(doc, engine).types;
    this.#compiler = new Compiler(engine, names);
    for (const [name, value] of Object.entries(doc.values ?? {}))
      this.values.set(name, this.#compiler.value(value));
    this.#answered = answeredBehind(doc);
    this.#limits = new LimitPreparer(this.#compiler, names, this.values);
  }

  #count(count: number | string, atMost: number): (run: Names) => number | Failure {
    return wholeNumber(this.#limits.number(count, unitNamed("1")), atMost);
  }

  point(id: string, point: PointDefinition): Mutable<PreparedPoint> {
    const { ask = {}, calculate, several } = point;
    const kind = pointKind(point);
    const unit = point.quantity?.unit;
    return {
      id,
      isInherited: id in Object.prototype,
      kind,
      unit: unit ?? null,
      maximum: point.maximum,
      read: answerReader(point, kind),
      calculate:
        kind === "calculated" ? this.#limits.number(calculate ?? "", unitNamed(unit)) : undefined,
      isGiven: kind === "calculated" && !this.#answered.has(id),
      several: several && { count: this.#count(several.count, 50), combine: several.combine },
      when: ask.when === undefined ? undefined : this.#compiler.formula(ask.when),
      stops: [],
      repeat: undefined,
      mandatory: ask.mandatory === true,
      absentAllowed: ask.absentAllowed ?? [],
      evidence: ask.evidence ?? [],
      limits: this.#limits.limits(point),
    };
  }

  repeat(
    { id, points, repeat }: Group,
    byId: ReadonlyMap<string, Mutable<PreparedPoint>>,
  ): PreparedRepeat | undefined {
    if (repeat === undefined) return undefined;
    const { each, members, count, atMost = MOST_MEMBERS } = repeat;
    const own = [...new Set(points)].flatMap((name) => byId.get(name) ?? []);
    const prepared: PreparedRepeat = {
      id,
      each,
      points: own,
      named: members,
      count: count === undefined ? undefined : this.#count(count, atMost),
      allows: (member) => allowsMember(repeat, member),
    };
    for (const point of own) point.repeat = prepared;
    return prepared;
  }
}

/** Hangs each stop on the points it stops. */
function prepareStops(
  stops: readonly StopDefinition[],
  groups: readonly Group[],
  byId: ReadonlyMap<string, Mutable<PreparedPoint>>,
): void {
  for (const { after, on, points = [], groups: stopped = [], say } of stops) {
    const sources = after.flatMap((name) => byId.get(name) ?? []);
    const stop: PreparedStop = { after: sources, on: new Set<unknown>(on), say };
    const within = groups.filter(({ id }) => stopped.includes(id)).flatMap((group) => group.points);
    for (const name of new Set([...points, ...within])) {
      const target = byId.get(name);
      if (target !== undefined && !after.includes(name)) target.stops = [...target.stops, stop];
    }
  }
}

/** Everything about a checklist that no answer changes, worked out once. */
export function prepare(doc: Checklist, engine: FormulaEngine | undefined): Prepared {
  const preparing = new Preparing(doc, engine);
  const points = Object.entries(doc.properties).map(([id, point]) => preparing.point(id, point));
  const byId = new Map(points.map((point) => [point.id, point]));
  const groups = doc.groups ?? [];
  const repeats = groups.flatMap((group) => preparing.repeat(group, byId) ?? []);
  prepareStops(doc.stops ?? [], groups, byId);
  const scores = Object.entries(doc.scores ?? {});
  const single = points.filter(({ repeat }) => repeat === undefined);
  return {
    points,
    single,
    unjudged: Object.fromEntries(single.map(({ id }) => [id, NOT_ANSWERED])),
    repeats,
    byId,
    particulars: new Map(Object.entries(doc.particulars ?? {})),
    values: preparing.values,
    neededFirst: neededFirst(doc),
    scores,
    judges: scores.length > 0 || points.some((point) => point.limits.length > 0),
  };
}
