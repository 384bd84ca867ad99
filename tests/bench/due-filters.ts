import type { DueStatus } from "@roundbook/schemas";
import { type DueAsked, dueQueries, readDue } from "../../server/usecases/read-due.ts";
import { BENCH_DAY, type BenchEstate, PAGE, RARE_WORD, SCOPES } from "./bench-estate.ts";
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
/** Filters that come out worst are named, with their times. */
const NAMED = 12;

const SCOPED = (site: string, owner: string): Record<string, DueAsked> => ({
  all: {},
  site: { site },
  "a building": { place: SCOPES.building },
  "a room": { place: SCOPES.room },
  keeper: { keeper: owner },
  "keeper of few": { keeper: SCOPES.fewKept },
  "keeper at a site": { keeper: owner, site },
});
const TYPES: Record<string, DueAsked> = {
  "": {},
  type: { assetType: "bench" },
  "rare type": { assetType: SCOPES.rareType },
};
/** A word that all assets have, and one that few have. */
const WORDS: Record<string, DueAsked> = {
  "": {},
  word: { q: "asset" },
  "rare word": { q: RARE_WORD },
};

/** Every filter that the due list offers with every other, by what it is called in the table. */
function everyFilter({ site, owner }: BenchEstate): Map<string, DueAsked> {
  const found = new Map<string, DueAsked>();
  for (const [scope, where] of Object.entries(SCOPED(site, owner)))
    for (const [type, ofType] of Object.entries(TYPES))
      for (const status of STATUSES)
        for (const [word, q] of Object.entries(WORDS))
          found.set([scope, type, status, word].filter(Boolean).join(" + "), {
            ...where,
            ...ofType,
            ...(status && { status }),
            ...q,
            on: BENCH_DAY,
            limit: PAGE,
          });
  return found;
}

interface Timed {
  readonly said: string;
  readonly ours: number;
  /** The same statements and values through the same client, without what we make of the rows. */
  readonly bare: number;
  /** A whole page: what is read of it outweighs what is asked beside it. */
  readonly whole: boolean;
  /** In the smaller estate; null where that has another number of rows for this page. */
  readonly small: number | null;
}

async function bareOf({ ctx, store }: BenchEstate, asked: DueAsked) {
  const statements = (await dueQueries(ctx, asked)).queries.map((query) => query.getSQL());
  return async () => {
    for (const statement of statements) await store.db.all(statement);
  };
}

function worstOf(all: readonly Timed[], ratioOf: (one: Timed) => number | null) {
  const found = all
    .map((one) => ({ one, ratio: ratioOf(one) }))
    .filter((each): each is { one: Timed; ratio: number } => each.ratio !== null)
    .sort((a, b) => b.ratio - a.ratio);
  for (const { one, ratio } of found.slice(0, NAMED))
    process.stderr.write(
      `${ratio.toFixed(2)} ${one.said}: ${one.ours.toFixed(2)} ms, same SQL ${one.bare.toFixed(2)} ms, small ${one.small?.toFixed(2) ?? "not alike"}\n`,
    );
  return found;
}

/** The due list by every filter: against the same SQL, and against a hundredth of the assets. */
export async function benchDueFilters(estates: readonly BenchEstate[]): Promise<Row[]> {
  const [small, large] = estates;
  if (small === undefined || large === undefined) throw new Error("the bench needs two estates");
  const ofSmall = everyFilter(small);
  const all: Timed[] = [];
  for (const [said, asked] of everyFilter(large)) {
    const there = ofSmall.get(said) ?? {};
    const rows = (await readDue(large.ctx, asked)).rows.length;
    const alike = (await readDue(small.ctx, there)).rows.length === rows;
    const [ours = Number.NaN, bare = Number.NaN, before = Number.NaN] = await latencies(
      [
        () => readDue(large.ctx, asked),
        await bareOf(large, asked),
        ...(alike ? [() => readDue(small.ctx, there)] : []),
      ],
      TURNS,
    );
    all.push({ said, ours, bare, whole: rows === PAGE, small: alike ? before : null });
  }
  const grown = worstOf(all, ({ ours, small: before }) => before && ours / before);
  const dearer = worstOf(all, ({ ours, bare, whole }) => (whole ? ours / bare : null));
  const row = (found: typeof grown, what: string, against: string, figure: string): Row => ({
    what: `due list by ${found.length} filters, worst ${what}: ${found[0]?.one.said}`,
    against,
    ratio: found[0]?.ratio ?? Number.NaN,
    figure,
    target: "≤ 1.5",
    met: (found[0]?.ratio ?? Number.NaN) <= 1.5,
  });
  const ms = (value: number | null | undefined) => `${(value ?? Number.NaN).toFixed(2)} ms`;
  return [
    row(
      grown,
      "growth",
      "10 k assets",
      `${ms(grown[0]?.one.ours)} against ${ms(grown[0]?.one.small)}`,
    ),
    row(
      dearer,
      "page of 50 in 1 M assets",
      "same SQL, same client",
      `${ms(dearer[0]?.one.ours)} against ${ms(dearer[0]?.one.bare)}`,
    ),
  ];
}
