import type { Answer, Answers, Particulars } from "../../checklist/answer-types.ts";
import type { Starter } from "../../starters/starter.ts";

/** A filled-in sheet. */
export interface Sheet {
  readonly particulars: Particulars;
  readonly answers: Answers;
  /** Day of the inspection, ISO 8601. */
  readonly on?: string;
  readonly previous?: Answers;
}

/** Answers put one at a time in the place of one on a passing sheet, each with the verdict wanted. */
export interface Step {
  /** Name of the passing sheet. */
  readonly sheet: string;
  /** Name of the answer: the point, or `point@member`. */
  readonly point: string;
  /** The answer name whose verdict is meant, where it is another: a calculated point. */
  readonly judged?: string;
  readonly tries: readonly (readonly [Answer, "pass" | "advisory" | "fail" | "undecided"])[];
}

/**
 * Where a number of a starter comes from: a published figure by its id, which `says` this much
 * (in `unit` where it differs from the unit of the place), or practice, or memory of a document.
 */
export type NumberOrigin =
  | { readonly id: string; readonly says: number; readonly unit?: string }
  | { readonly practice: string }
  | { readonly memory: string };

export interface StarterCase {
  readonly starter: Starter;
  readonly sheets: Readonly<Record<string, Sheet>>;
  readonly steps: readonly Step[];
  /** By JSON Pointer of the number, or of a part of a text: `/values/x/formula#0.1`. */
  readonly numbers: Readonly<Record<string, NumberOrigin>>;
}

export const practice = (why: string): NumberOrigin => ({ practice: why });
export const memory = (document: string): NumberOrigin => ({ memory: document });
export const published = (id: string, says: number, unit?: string): NumberOrigin =>
  unit === undefined ? { id, says } : { id, says, unit };
