import type { DueStatus } from "@roundbook/schemas";
import { type DueAsked, readDue } from "../../server/usecases/read-due.ts";
import { BENCH_DAY, type BenchEstate, PAGE } from "./bench-estate.ts";
import { latencies } from "./measure.ts";
import type { Row } from "./row.ts";

const STATUSES: readonly (DueStatus | undefined)[] = [
  undefined,
  "not-yet",
  "early",
  "due",
  "late-window",
  "overdue",
  "never-done",
  "blocked",
  "excused",
  "undecided",
];
const TURNS = 15;
/** Filters that grow most are named, with their times. */
const NAMED = 30;

/** Every filter that the due list offers with every other, by what it is called in the table. */
function everyFilter({ site, owner }: BenchEstate): Map<string, DueAsked> {
  const found = new Map<string, DueAsked>();
  const scopes: Record<string, DueAsked> = {
    all: {},
    site: { site },
    place: { place: site },
    keeper: { keeper: owner },
  };
  for (const [scope, where] of Object.entries(scopes))
    for (const type of [undefined, "bench"])
      for (const status of STATUSES)
        for (const q of [undefined, "asset"]) {
          const said = [scope, type && "type", status, q && "text"].filter(Boolean).join(" + ");
          found.set(said, {
            ...where,
            ...(type && { assetType: type }),
            ...(status && { status }),
            ...(q && { q }),
            on: BENCH_DAY,
            limit: PAGE,
          });
        }
  return found;
}

/**
 * The worst growth of a page of the due list from the first estate to the second, by filter. Where
 * the first has no more rows than part of a page, its time is that of fewer rows: not compared.
 */
export async function benchDueFilters(estates: readonly BenchEstate[]): Promise<Row> {
  const [small, large] = estates;
  if (small === undefined || large === undefined) throw new Error("the bench needs two estates");
  const ofLarge = everyFilter(large);
  const grown: { said: string; before: number; after: number }[] = [];
  for (const [said, asked] of everyFilter(small)) {
    const there = ofLarge.get(said) ?? {};
    const pages = [await readDue(small.ctx, asked), await readDue(large.ctx, there)];
    if (pages[0]?.rows.length !== pages[1]?.rows.length) continue;
    const [before = Number.NaN, after = Number.NaN] = await latencies(
      [() => readDue(small.ctx, asked), () => readDue(large.ctx, there)],
      TURNS,
    );
    grown.push({ said, before, after });
  }
  grown.sort((a, b) => b.after / b.before - a.after / a.before);
  for (const { said, before, after } of grown.slice(0, NAMED))
    process.stderr.write(`${said}: ${after.toFixed(2)} ms against ${before.toFixed(2)} ms\n`);
  const [worst = { said: "", before: Number.NaN, after: Number.NaN }] = grown;
  const ratio = worst.after / worst.before;
  return {
    what: `due list by ${grown.length} filters, worst: ${worst.said}, 1 M assets`,
    against: "10 k assets",
    ratio,
    figure: `${worst.after.toFixed(2)} ms against ${worst.before.toFixed(2)} ms`,
    target: "≤ 1.5",
    met: ratio <= 1.5,
  };
}
