import type { EntryOf, Judgement } from "@roundbook/schemas";

/** A sealed inspection as the projections take it in: `on` in days since 1970, `at` in milliseconds. */
export interface Inspected {
  readonly entry: EntryOf<"inspection">;
  readonly seq: number;
  readonly asset: string;
  readonly judgement: Judgement;
  readonly on: number;
  readonly at: number | null;
  /** As it was judged before, where a result has come since: only what that changes is new. */
  readonly before: Judgement | null;
}
