import { COMPARATORS, type Comparator, LONGEST_WAIT } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { roundSignificant } from "../shared/significant.ts";
import { convert, unitOf } from "../units/units.ts";
import { type Given, unusable } from "./given.ts";

/** The members an answer may have, whichever kind it is of. */
export interface Members {
  readonly value?: unknown;
  readonly unit?: unknown;
  readonly comparator?: unknown;
  readonly elapsed?: unknown;
  readonly sample?: unknown;
  readonly takenAt?: unknown;
  readonly result?: unknown;
  readonly signedBy?: unknown;
  readonly absent?: unknown;
}

export type ReadMembers = (answer: unknown, members: Members | undefined) => Given;

const isComparator = (value: unknown): value is Comparator =>
  (COMPARATORS as readonly unknown[]).includes(value);

const isElapsed = (value: unknown): boolean =>
  value === undefined || (typeof value === "number" && value >= 0 && value <= LONGEST_WAIT);

const isOfReading = (name: string): boolean =>
  name === "value" || name === "unit" || name === "comparator" || name === "elapsed";

/** Whether an answer has no members but those of its kind: with others it is not well formed. */
export const hasOnly = (members: object, isKnown: (name: string) => boolean): boolean => {
  for (const name in members) if (!isKnown(name)) return false;
  return true;
};

/** The same of a reading, whose names are looked at only where it has more than it uses: quicker. */
const isReadingOnly = (members: object, used: number): boolean => {
  let more = -used;
  for (const _ in members) more += 1;
  return more === 0 || hasOnly(members, isOfReading);
};

type Wait = NonNullable<NonNullable<PointDefinition["ask"]>["wait"]>;

/** A figure read before the wait was over, or long after, is not the figure that was asked for. */
function untimely({ atLeast, atMost }: Wait, elapsed: unknown): Given | undefined {
  if (typeof elapsed !== "number" || !Number.isFinite(elapsed))
    return unusable("elapsed-missing", { atLeast: atLeast ?? null, atMost: atMost ?? null });
  if (atLeast !== undefined && elapsed < atLeast)
    return unusable("read-too-early", { elapsed, atLeast });
  if (atMost !== undefined && elapsed > atMost)
    return unusable("read-too-late", { elapsed, atMost });
  return undefined;
}

/** Numbers come out in the point's unit and rounded, so that a unit never changes a verdict. */
export function readReading({ quantity, ask }: PointDefinition): ReadMembers {
  const to = quantity?.unit;
  const known = to !== undefined && unitOf(to) !== undefined;
  const wait = ask?.wait;
  return (_, members) => {
    const { value, unit, comparator, elapsed } = members ?? {};
    if (members === undefined || typeof value !== "number" || typeof unit !== "string")
      return unusable("not-an-answer", { kind: "reading" });
    if (comparator !== undefined && !isComparator(comparator))
      return unusable("not-an-answer", { kind: "reading" });
    const used = 2 + (comparator === undefined ? 0 : 1) + (elapsed === undefined ? 0 : 1);
    if (!isReadingOnly(members, used)) return unusable("not-an-answer", { kind: "reading" });
    const converted = known ? (unit === to ? value : convert(value, unit, to)) : undefined;
    if (converted === undefined) return unusable("unit-not-convertible", { unit, to: to ?? null });
    if (!Number.isFinite(converted)) return unusable("not-finite-reading", {});
    const number: Given = {
      is: "number",
      value: roundSignificant(converted),
      comparator: comparator ?? "",
    };
    const mistimed = wait === undefined ? undefined : untimely(wait, elapsed);
    if (mistimed !== undefined) return mistimed;
    return isElapsed(elapsed) ? number : unusable("not-an-answer", { kind: "reading" });
  };
}
