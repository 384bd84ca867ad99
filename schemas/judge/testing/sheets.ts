import fc from "fast-check";
import { answerName } from "../../checklist/answer-name.ts";
import {
  ABSENCE_REASONS,
  type Answer,
  type Answers,
  type Particulars,
} from "../../checklist/answer-types.ts";
import { pointKind } from "../../checklist/guards.ts";
import type {
  Checklist,
  ParticularDefinition,
  PointDefinition,
} from "../../checklist/meta-schema.ts";
import { repeatsByPoint } from "../../checklist/repeats.ts";
import { compareReading } from "../compare.ts";
import type { JudgeInput } from "../run.ts";

const DAYS = ["2024-01-31", "2025-06-30", "2026-02-28", "2026-03-01", "2031-01-01"];
const BOUNDS = ["min", "max", "exclusiveMin", "exclusiveMax"] as const;

/** Numbers about the limits of a point: on them, a step to either side, and well within. */
function numbers(point: PointDefinition, inOrder: boolean): readonly number[] {
  const bounds = (point.limits ?? []).flatMap((limit) =>
    BOUNDS.flatMap((kind) => {
      const bound = limit[kind];
      return typeof bound === "number" ? [{ kind, bound }] : [];
    }),
  );
  const near = bounds.flatMap(({ bound }) => [bound, bound, bound + 0.1, bound - 0.1]);
  const middle = bounds.reduce((sum, { bound }) => sum + bound / bounds.length, 0);
  const all = [...near, middle, 0, 0.1, 0.5, 1, 2, 5, 12, 20, 50, 300];
  const within = all.filter((value) =>
    bounds.every(({ kind, bound }) => compareReading(kind, "", value, bound) === "pass"),
  );
  return inOrder && within.length > 0 ? within : all;
}

const pick = <T>(from: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...from);

function readingOf(point: PointDefinition, inOrder: boolean): fc.Arbitrary<Answer> {
  const unit = point.quantity?.unit ?? "1";
  const { atLeast = 0, atMost = atLeast + 1 } = point.ask?.wait ?? {};
  const waits = point.ask?.wait !== undefined;
  return fc
    .record({
      value: pick(numbers(point, inOrder)),
      comparator: inOrder
        ? fc.constant(undefined)
        : pick([undefined, undefined, "<", "<=", ">", ">="] as const),
      elapsed: pick(inOrder ? [atLeast, atMost] : [atLeast, atMost, 0, atMost + 1]),
    })
    .map(({ value, comparator, elapsed }) => ({
      value,
      unit,
      ...(comparator === undefined ? {} : { comparator }),
      ...(waits ? { elapsed } : {}),
    }));
}

/** An answer of the right shape; in order as far as that can be told from the point alone. */
function answerOf(point: PointDefinition, inOrder: boolean): fc.Arbitrary<Answer> {
  const options = (point.oneOf ?? []).flatMap((one) => ("const" in one ? [one.const] : []));
  const accepted = (point.limits ?? []).flatMap(({ accept = [] }) => accept.map(String));
  switch (pointKind(point)) {
    case "check":
      return pick(inOrder ? ["ok"] : ["ok", "not-ok"]);
    case "choice":
      return pick(inOrder && accepted.length > 0 ? accepted : options);
    case "choices":
      return fc.subarray((point.items?.oneOf ?? []).map((one) => one.const));
    case "graded":
      return fc.integer({ min: inOrder ? 4 : (point.minimum ?? 0), max: point.maximum ?? 5 });
    case "count":
      return pick(numbers(point, inOrder).filter(Number.isInteger));
    case "reading":
      return readingOf(point, inOrder);
    case "readings": {
      const count = point.several?.count;
      const exactly = typeof count === "number" ? count : 2;
      const many = inOrder ? { minLength: exactly, maxLength: exactly } : { maxLength: 4 };
      return fc.array(readingOf(point, inOrder), many) as fc.Arbitrary<Answer>;
    }
    case "date":
      return pick(DAYS);
    case "text":
      return pick(["A 1", "12345", "words"]);
    case "photo":
      return fc.constant(["a".repeat(64)]);
    case "signature":
      return fc.constant({ signedBy: "M. Tolvane" });
    case "sample":
      return fc
        .option(readingOf(point, inOrder), { freq: inOrder ? 100 : 2, nil: undefined })
        .map((result) => ({ sample: "A 1", ...(result && { result }) }) as Answer);
    case "calculated":
      return fc.constant(1);
  }
}

type Entry<T> = readonly [name: string, value: T];

const objectOf = <T>(entries: readonly Entry<T | undefined>[]): Record<string, T> =>
  Object.fromEntries(
    entries.flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  );

/** Two entries by each name: one in order, one that need not be, nor be there at all. */
type Pair<T> = { readonly name: string; readonly good: T; readonly other: T | undefined };

/** All of them loosely, or all in order but a few. */
const looselyOf = <T>(pairs: readonly fc.Arbitrary<Pair<T>>[]): fc.Arbitrary<Record<string, T>> =>
  fc
    .tuple(fc.tuple(...pairs), fc.option(fc.array(fc.nat(), { maxLength: 2 }), { freq: 4 }))
    .map(([all, few]) =>
      objectOf(
        all.map(
          ({ name, good, other }, at): Entry<T | undefined> => [
            name,
            few === null || few.some((one) => one % all.length === at) ? other : good,
          ],
        ),
      ),
    );

function answersOf(doc: Checklist): fc.Arbitrary<Answers> {
  const repeats = repeatsByPoint(doc);
  const pairs = Object.entries(doc.properties).flatMap(([id, point]) => {
    if (pointKind(point) === "calculated") return [];
    const repeat = repeats.get(id)?.repeat;
    const members = repeat ? (repeat.members?.map((one) => one.id) ?? ["1", "2", "3"]) : [null];
    const reasons = [...(point.ask?.absentAllowed ?? []), ...ABSENCE_REASONS.slice(0, 1)];
    const absence = pick(reasons).map((reason): Answer => ({ absent: { reason } }));
    const other = fc.option(fc.oneof({ weight: 8, arbitrary: answerOf(point, false) }, absence), {
      freq: 8,
      nil: undefined,
    });
    return members.map((member) =>
      fc.record({ name: fc.constant(answerName(id, member)), good: answerOf(point, true), other }),
    );
  });
  return looselyOf<Answer>(pairs);
}

function particularOf(definition: ParticularDefinition): fc.Arbitrary<Particulars[string]> {
  const { minimum = 0, maximum = minimum + 10 } = definition;
  if (definition.enum) return pick(definition.enum);
  if (definition.format === "date") return pick(DAYS);
  if (definition.type === "boolean") return fc.boolean();
  return definition.type === "string"
    ? fc.constant("A")
    : pick([minimum, maximum, Math.floor((minimum + maximum) / 2)]);
}

const particularsOf = (doc: Checklist): fc.Arbitrary<Particulars> =>
  looselyOf<Particulars[string]>(
    Object.entries(doc.particulars ?? {}).map(([name, definition]) =>
      fc.record({
        name: fc.constant(name),
        good: particularOf(definition),
        other: fc.option(particularOf(definition), { freq: 2, nil: undefined }),
      }),
    ),
  );

/** What is known of one inspection: often all in order but a thing or two, often on a limit. */
export const sheetOf = (doc: Checklist): fc.Arbitrary<JudgeInput> =>
  fc.record(
    {
      particulars: particularsOf(doc),
      answers: answersOf(doc),
      previous: answersOf(doc),
      on: pick(DAYS),
    },
    { requiredKeys: ["particulars", "answers"] },
  );
