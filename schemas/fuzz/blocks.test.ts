import { expect, it } from "vitest";
import { resolveBlocks } from "../checklist/resolve-blocks.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { PLUG_BLOCK } from "../testing/plug-block.ts";
import { parseBlock } from "../validate/index.ts";
import { examine, inherited } from "./examine.ts";
import { expectPlaces, frozen } from "./expectations.ts";
import { MUTATIONS, mutated } from "./mutate.ts";
import { Random } from "./random.ts";

const RUNS = 3000;

it("every mutated block is refused with places, or taken into a checklist that stands alone", () => {
  const before = inherited();
  const fates = { refused: 0, clashing: 0, taken: 0 };
  for (let run = 0; run < RUNS; run += 1) {
    const random = new Random(5_000_000 + run);
    const family = random.pick(Object.values(MUTATIONS));
    const value = frozen(mutated(random, PLUG_BLOCK, family));
    const parsed = parseBlock(value);
    if (!parsed.ok) {
      expectPlaces(parsed.problems, value);
      fates.refused += 1;
      continue;
    }
    const base = random.pick([EXTENSION_LEAD, LEAVES_AND_SOCKETS]);
    const draft = frozen({ ...base, include: [{ block: parsed.value.name }] });
    const resolved = resolveBlocks(draft, () => parsed.value);
    if (resolved.ok) {
      fates.taken += 1;
      expect(examine(random, resolved.value)).not.toBe("refused");
    } else {
      fates.clashing += 1;
      expectPlaces(resolved.problems, draft);
    }
  }
  expect(inherited()).toEqual(before);
  for (const count of Object.values(fates)) expect(count).toBeGreaterThan(RUNS / 100);
}, 180_000);
