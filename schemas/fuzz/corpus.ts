import { expect, it } from "vitest";
import type { Checklist } from "../checklist/meta-schema.ts";
import { STARTERS } from "../starters/index.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { examine, type Fate, inherited } from "./examine.ts";
import { MUTATIONS, mutated } from "./mutate.ts";
import { Random } from "./random.ts";

const CORPUS: readonly Checklist[] = [
  EVERY_KIND,
  EXTENSION_LEAD,
  LEAVES_AND_SOCKETS,
  ...STARTERS.map(({ checklist }) => checklist),
];

/** Mutates every document of the corpus alike often: each ends in problems with places, or judged. */
export const fuzzFamily = (family: keyof typeof MUTATIONS, seed: number, runs: number): void => {
  it(`${family}: every mutated document loads, or is told what is wrong and where`, () => {
    const before = inherited();
    const fates: Record<Fate, number> = { refused: 0, faulty: 0, issued: 0 };
    for (let run = 0; run < runs; run += 1) {
      const random = new Random(seed + run);
      const doc = CORPUS[run % CORPUS.length];
      const value = mutated(random, doc, MUTATIONS[family]);
      try {
        fates[examine(random, value)] += 1;
      } catch (error) {
        throw new Error(`seed ${seed + run} of ${doc?.title}`, { cause: error });
      }
    }
    expect(inherited()).toEqual(before);
    // Each fate is met often enough to have been tried.
    for (const count of Object.values(fates)) expect(count).toBeGreaterThan(runs / 50);
    expect(fates.refused + fates.faulty + fates.issued).toBe(runs);
  }, 180_000);
};
