import { sql } from "drizzle-orm";
import { readDue } from "../../server/usecases/read-due.ts";
import { readHistory } from "../../server/usecases/read-history.ts";
import {
  BENCH_DAY,
  type BenchEstate,
  fillByStatement,
  openBenchEstate,
  PAGE,
  wellKnownAsset,
} from "./bench-estate.ts";
import { benchDueFilters } from "./due-filters.ts";
import { latencies } from "./measure.ts";
import type { Row } from "./row.ts";
import { THIRTY_POINTS } from "./thirty-points.ts";

const SIZES = [10_000, 1_000_000] as const;
const TURNS = 300;

const bareDue = (site: string) =>
  sql.raw(`select w.*, a.number, a.description, a.place, i.title, i.checklist, l.overall
    from windows w join assets a on a.id = w.asset join intervals i on i.id = +w.interval and i.generation = +w.generation
    left join last_results l on l.asset = w.asset and l.checklist = i.checklist
    where w.site = '${site}' order by w.due, w.id limit 51`);

const bareHistory = (asset: string) =>
  sql.raw(`select e.seq, e.civil_date, e.at, d.entry, d.leaf from entries e
    join entry_docs d on d.seq = e.seq where e.asset = '${asset}'
    order by e.civil_date desc, e.at desc, e.seq desc limit 51`);

/** The four ways to read one estate; each has to give a whole page. */
const readsOf = ({ ctx, store, site }: BenchEstate, count: number) => {
  const asset = (turn: number) => wellKnownAsset(turn, count);
  const whole = async (rows: Promise<readonly unknown[]>) => {
    const { length } = await rows;
    if (length < PAGE) throw new Error(`the bench reads ${length} rows instead of ${PAGE}`);
  };
  const rowsOf = async (page: Promise<{ rows: readonly unknown[] }>) => (await page).rows;
  return [
    () => whole(rowsOf(readDue(ctx, { site, on: BENCH_DAY, limit: PAGE }))),
    () => whole(store.db.all(bareDue(site))),
    (turn: number) => whole(rowsOf(readHistory(ctx, asset(turn), { limit: PAGE }))),
    (turn: number) => whole(store.db.all(bareHistory(asset(turn)))),
  ];
};

const size = (count: number): string => (count >= 1e6 ? `${count / 1e6} M` : `${count / 1e3} k`);

/**
 * The due list and one asset's history against the same SQL through the same client, and their
 * growth: both sizes are read in turn, so that whatever else the machine does meets them alike.
 */
export const benchReading = async (): Promise<Row[]> => {
  const estates: BenchEstate[] = [];
  try {
    const reads: ReturnType<typeof readsOf> = [];
    for (const count of SIZES) {
      const estate = await openBenchEstate(THIRTY_POINTS);
      estates.push(estate);
      await fillByStatement(estate, count);
      reads.push(...readsOf(estate, count));
    }
    const times = await latencies(reads, TURNS);
    const rows = SIZES.flatMap((count, at) => againstBare(count, times.slice(at * 4)));
    return [
      ...rows,
      growth("due list", times[0], times[4]),
      growth("history", times[2], times[6]),
      ...(await benchDueFilters(estates)),
    ];
  } finally {
    for (const estate of estates) await estate.close();
  }
};

const againstBare = (count: number, times: readonly number[]): Row[] => {
  const [due = 0, dueBare = 0, history = 0, historyBare = 0] = times;
  const row = (what: string, ours: number, bare: number): Row => ({
    what: `${what}, ${PAGE} rows, ${size(count)} assets`,
    against: "same SQL, same client",
    ratio: ours / bare,
    figure: `${ours.toFixed(2)} ms against ${bare.toFixed(2)} ms`,
  });
  return [row("due list", due, dueBare), row("history of one asset", history, historyBare)];
};

const growth = (what: string, small = Number.NaN, large = Number.NaN): Row => ({
  what: `${what}, 1 M assets`,
  against: "10 k assets",
  ratio: large / small,
  figure: `${large.toFixed(2)} ms against ${small.toFixed(2)} ms`,
  target: "≤ 1.5",
  met: large / small <= 1.5,
});
