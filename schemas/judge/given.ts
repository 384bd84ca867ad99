import type { AbsenceReason, Comparator } from "../checklist/answer-types.ts";
import type { Explanation } from "../shared/problem.ts";
import type { JudgeCode } from "./codes.ts";

/** A number and what is known of it: `>` 200 is all an instrument that tops out can say. */
export interface Measured {
  readonly value: number;
  readonly comparator: Comparator | "";
}

/** What an answer comes to; those from `number` on are answers that can be used. */
export type Given =
  | { readonly is: "missing" }
  | { readonly is: "absent"; readonly reason: AbsenceReason }
  | { readonly is: "unusable"; readonly why: Explanation }
  /** A sample whose result has not come. */
  | { readonly is: "pending"; readonly sample: string }
  | ({ readonly is: "number" } & Measured)
  /** Several readings of one quantity, at least one. */
  | { readonly is: "many"; readonly readings: readonly Measured[] }
  | { readonly is: "word"; readonly value: string }
  | { readonly is: "words"; readonly values: readonly string[] }
  /** A civil date as days since 1970-01-01. */
  | { readonly is: "date"; readonly day: number; readonly value: string }
  | { readonly is: "content" };

export type Usable = Exclude<Given, { is: "missing" | "absent" | "unusable" | "pending" }>;
export type ReadAnswer = (answer: unknown) => Given;

export const MISSING: Given = { is: "missing" };

export const explained = (code: JudgeCode, params: Explanation["params"] = {}): Explanation => ({
  code,
  params,
});

export const unusable = (code: JudgeCode, params: Explanation["params"]): Given => ({
  is: "unusable",
  why: explained(code, params),
});

/** Reads an own property only: a point may be named `constructor`. */
export const own = (object: unknown, name: string): unknown =>
  typeof object === "object" && object !== null && Object.hasOwn(object, name)
    ? (object as Readonly<Record<string, unknown>>)[name]
    : undefined;

export const isUsable = (given: Given): given is Usable =>
  given.is !== "missing" &&
  given.is !== "absent" &&
  given.is !== "unusable" &&
  given.is !== "pending";
