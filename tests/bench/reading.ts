import { sql } from "drizzle-orm";
import { readDue } from "../../server/usecases/read-due.ts";
import { readHistory } from "../../server/usecases/read-history.ts";
import {
  BENCH_DAY,
  type BenchEstate,
  benchAsset,
  fillByStatement,
  openBenchEstate,
} from "./bench-estate.ts";
import { latencies } from "./measure.ts";
import type { Row } from "./row.ts";
import { THIRTY_POINTS } from "./thirty-points.ts";

const SIZES = [10_000, 1_000_000] as const;
const TURNS = 300;

const bareDue = (site: string) =>
  sql.raw(`select w.*, a.number, a.description, a.place, i.title, i.checklist, l.overall
    from windows w join assets a on a.id = w.asset join intervals i on i.id = w.interval
    left join last_results l on l.asset = w.asset and l.checklist = i.checklist
    where w.site = '${site}' order by w.due, w.asset, w.interval limit 51`);

const bareHistory = (asset: string) =>
  sql.raw(`select e.seq, e.civil_date, e.at, d.entry, d.leaf from entries e
    join entry_docs d on d.seq = e.seq where e.asset = '${asset}'
    order by e.civil_date desc, e.at desc, e.seq desc limit 51`);

const measure = async ({ ctx, store, site }: BenchEstate, count: number): Promise<number[]> => {
  const asset = (turn: number) => benchAsset(1 + ((turn * 7919) % count));
  return latencies(
    [
      () => readDue(ctx, { site, on: BENCH_DAY, limit: 50 }),
      () => store.db.all(bareDue(site)),
      (turn) => readHistory(ctx, asset(turn)),
      (turn) => store.db.all(bareHistory(asset(turn))),
    ],
    TURNS,
  );
};

const size = (count: number): string => (count >= 1e6 ? `${count / 1e6} M` : `${count / 1e3} k`);

/** The due list and one asset's history against the same SQL through the same client, and their growth. */
export const benchReading = async (): Promise<Row[]> => {
  const rows: Row[] = [];
  const found: number[][] = [];
  for (const count of SIZES) {
    const estate = await openBenchEstate(THIRTY_POINTS);
    try {
      await fillByStatement(estate, count);
      const times = await measure(estate, count);
      found.push(times);
      const [due = 0, dueBare = 0, history = 0, historyBare = 0] = times;
      const against = "same SQL, same client";
      const ms = (a: number, b: number) => `${a.toFixed(2)} ms against ${b.toFixed(2)} ms`;
      rows.push(
        {
          what: `due list, 50 rows, ${size(count)} assets`,
          against,
          ratio: due / dueBare,
          figure: ms(due, dueBare),
        },
        {
          what: `history of one asset, ${size(count)} assets`,
          against,
          ratio: history / historyBare,
          figure: ms(history, historyBare),
        },
      );
    } finally {
      await estate.close();
    }
  }
  const [small = [], large = []] = found;
  for (const [at, what] of [
    [0, "due list"],
    [2, "history"],
  ] as const) {
    const ratio = (large[at] ?? Number.NaN) / (small[at] ?? Number.NaN);
    rows.push({
      what: `${what}, 1 M assets`,
      against: "10 k assets",
      ratio,
      figure: "flat",
      target: "≤ 1.5",
      met: ratio <= 1.5,
    });
  }
  return rows;
};
