import type { Verdict } from "./judgement.ts";

/** How grave a verdict is: the gravest of several decides. */
export const GRAVITY = { pass: 0, advisory: 1, undecided: 2, fail: 3 } as const satisfies Readonly<
  Record<Verdict, number>
>;

/** Picks the bound that decides: the gravest, the first of equals, and of passes the nearest. */
export class Tally {
  verdict: Verdict | undefined = undefined;
  bound: number | null = null;
  #distance = Number.POSITIVE_INFINITY;

  /** Whether this one decides so far. `distance` is from the reading to the bound. */
  add(verdict: Verdict, bound: number | null, distance: number): boolean {
    if (this.verdict !== undefined) {
      const more = GRAVITY[verdict] - GRAVITY[this.verdict];
      if (more < 0 || (more === 0 && !(verdict === "pass" && distance < this.#distance)))
        return false;
    }
    this.verdict = verdict;
    this.bound = bound;
    this.#distance = distance;
    return true;
  }
}
