import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Checklist, canonicalize, issueDocument } from "@roundbook/schemas";
import { sql } from "drizzle-orm";
import { createNewId } from "../../server/new-id.ts";
import { openStore, type Store } from "../../server/store/open-store.ts";
import { sha256 } from "../../server/store/sha256.ts";
import { appendEntries } from "../../server/usecases/append-entries.ts";
import { commitText } from "../../server/usecases/commit-text.ts";
import { type Context, createContext } from "../../server/usecases/context.ts";
import { createEstate } from "../../server/usecases/create-estate.ts";

export const BENCH_DAY = "2026-10-13";
const NOW = Date.parse(`${BENCH_DAY}T09:00:00Z`);

export interface BenchEstate {
  readonly ctx: Context;
  readonly store: Store;
  readonly url: string;
  readonly owner: string;
  readonly site: string;
  readonly checklist: { id: string; issue: number; hash: string };
  readonly interval: string;
  bytes(): number;
  close(): Promise<void>;
}

/** An empty estate with an owner, a site, one asset type, one issued checklist and an interval. */
export const openBenchEstate = async (document: Checklist): Promise<BenchEstate> => {
  const folder = mkdtempSync(join(tmpdir(), "roundbook-bench-"));
  const file = join(folder, "bench.db");
  const url = `file:${file}`;
  const store = await openStore({ url });
  const clock = Date.now;
  const ctx = createContext({ store, clock, newId: createNewId(clock) });
  await createEstate(ctx, { name: "Bench Estate" });
  const issued = issueDocument(document);
  const hash = Buffer.from(sha256(Buffer.from(canonicalize(issued)))).toString("hex");
  const [owner, site, checklistId, interval] = [0, 1, 2, 3].map(() => ctx.newId()) as [
    string,
    string,
    string,
    string,
  ];
  const name = commitText("Ona Owner");
  const checklist = { id: checklistId, issue: 1, hash };
  const made = {
    asset: null,
    author: owner,
    civilDate: BENCH_DAY,
    happenedAt: new Date(NOW).toISOString(),
  };
  await appendEntries(ctx, {
    contents: [name.content],
    entries: [
      {
        ...made,
        kind: "person-added",
        body: { person: owner, role: "owner", name: name.commitment },
      },
      {
        ...made,
        kind: "place-added",
        body: {
          place: site,
          parent: null,
          level: "site",
          code: "1",
          name: "Bench",
          zone: "Europe/London",
        },
      },
      {
        ...made,
        kind: "checklist-issued",
        body: { checklist, document: issued as unknown as Record<string, unknown> },
      },
      {
        ...made,
        kind: "asset-type-issued",
        body: {
          assetType: "bench",
          version: 1,
          title: "Bench",
          particulars: {},
          checklists: [checklistId],
        },
      },
      {
        ...made,
        kind: "interval-set",
        body: {
          interval,
          definition: {
            title: "Half-yearly",
            assetType: "bench",
            checklist: checklistId,
            rule: { kind: "from-last-done", every: "P6M" },
          },
        },
      },
    ],
  });
  return {
    ctx,
    store,
    url,
    owner,
    site,
    checklist,
    interval,
    bytes: () => statSync(file).size,
    close: async () => {
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

const STEP = 100_000;
/** As many at every size. */
const FEW = 20;
/** Of so many assets. */
export const RARE_WORD = "slipway";

/** Scopes of the filled estate beside its first site. */
export const SCOPES = {
  /** The other half of the sites, with an eighth of all assets in one building. */
  elsewhere: "20000000-0000-7000-8000-000000000001",
  building: "20000000-0000-7000-8000-000000000002",
  /** Has few assets, half of them of a type that nothing else is. */
  room: "20000000-0000-7000-8000-000000000003",
  rareType: "rare",
  /** A person who keeps few. */
  fewKept: "20000000-0000-7000-8000-000000000004",
} as const;

/** What `openBenchEstate` sealed before. */
const FIRST_ENTRIES = 5;

export const benchAsset = (at: number): string =>
  `00000000-0000-7000-8000-${at.toString(16).padStart(12, "0")}`;

/** Assets whose history fills a page; the bench asks for these in turn. */
const WELL_KNOWN = 100;
export const PAGE = 50;
/** Entries of every asset: registered, and a date brought forward. */
const OF_EVERY = 2;
/** A prime: the assets lie apart all over the register. */
const STRIDE = 7919;

export const wellKnownAsset = (turn: number, count: number): string =>
  benchAsset(1 + (((turn % WELL_KNOWN) * STRIDE) % count));

/**
 * Fills register, windows and log with made rows straight in SQL: the reads are measured here, not
 * the way the rows came in, and a million assets through the log would take the bench's whole time.
 */
export const fillByStatement = async (estate: BenchEstate, count: number): Promise<void> => {
  const { owner, site, interval } = estate;
  const run = (statement: string) =>
    estate.store.write(async (tx) => {
      await tx.run(sql.raw(statement));
    });
  const idOf = (at: string) => `printf('00000000-0000-7000-8000-%012x', ${at})`;
  const id = idOf("i");
  const each = async (statement: (series: string) => string, total = count) => {
    for (let from = 1; from <= total; from += STEP) {
      const to = Math.min(total, from + STEP - 1);
      await run(
        statement(
          `(with recursive n(i) as (select ${from} union all select i + 1 from n where i < ${to}) select i from n)`,
        ),
      );
    }
  };
  await each(
    (
      series,
    ) => `insert into assets (id, number, number_key, number_order, asset_type, description, site, place,
      particulars, particulars_on, particulars_at, particulars_entry, serial, status, status_on, status_at,
      status_entry, walk_order, registered_on, search, seq)
      select ${id}, cast(i as text), cast(i as text), printf('%012d', i), 'bench', 'Bench asset ' || i,
      '${site}', '${site}', '{}', 20000, 0, '', null, 'in-service', 20000, 0, '', 0, 20000,
      ' bench asset ' || i || iif(i <= ${FEW}, ' ${RARE_WORD}', ''), 100 + i from ${series}`,
  );
  await each(
    (series) => `insert into asset_words (word, asset) select 'asset', ${id} from ${series}
      union all select cast(i as text), ${id} from ${series}
      union all select '${RARE_WORD}', ${id} from ${series} where i <= ${FEW}`,
  );
  const { elsewhere, building, room, rareType, fewKept } = SCOPES;
  const placed = `iif(i % 8 < 4, '${site}', '${elsewhere}'),
      iif(i <= ${FEW}, '${room}', iif(i % 8 = 4, '${building}', iif(i % 8 < 4, '${site}', '${elsewhere}'))),
      iif(i <= ${FEW / 2}, '${rareType}', iif(i % 3 = 0, 'other', 'bench')),
      iif(i between ${FEW / 2} and ${FEW + FEW / 2}, '${fewKept}', iif(i / 100 % 4 = 0, '${owner}', null))`;
  // Of a hundred windows five were never done, one is blocked, one excused and one undecided.
  await each(
    (
      series,
    ) => `insert into windows (asset, interval, site, place, asset_type, keeper, earliest, due, latest,
      from_entry, last_done, state, state_from, reopens, why, generation)
      select ${id}, '${interval}', ${placed},
      20600 + i * 7 % 365 - 14, 20600 + i * 7 % 365, 20600 + i * 7 % 365 + 14, null,
      iif(i % 100 < 5, null, 20400 + i * 7 % 365),
      case i % 100 when 10 then 'blocked' when 20 then 'excused' when 30 then 'undecided' end,
      iif(i % 100 in (10, 20), 20600, null), iif(i % 100 in (10, 20), 20900, null),
      '{"code":"from-last-done","params":{}}', (select generation from intervals where id = '${interval}')
      from ${series}`,
  );
  let last = FIRST_ENTRIES;
  const seal = async (kind: string, asset: string, total: number) => {
    const offset = last;
    await each(
      (
        series,
      ) => `insert into entries (seq, id, kind, asset, author, device, civil_date, at, received_at, hash, flags, delivered_by)
        select ${offset} + i, printf('10000000-0000-7000-8000-%012x', ${offset} + i), '${kind}', ${asset}, '${owner}', '${owner}',
        20000 + i % 600, -1, 0, printf('%064x', ${offset} + i), '', null from ${series}`,
      total,
    );
    await each(
      (series) => `insert into entry_docs (seq, entry, leaf, signature)
        select ${offset} + i, '{"asset":"' || ${asset} || '","author":"${owner}","body":{"number":"' || i || '"},"kind":"${kind}"}',
        '{"seq":' || (${offset} + i) || ',"flags":[]}', null from ${series}`,
      total,
    );
    last += total;
  };
  await seal("registered", id, count);
  await seal("brought-forward", id, count);
  const known = idOf(`1 + (i % ${WELL_KNOWN} * ${STRIDE}) % ${count}`);
  await seal("brought-forward", known, WELL_KNOWN * (PAGE - OF_EVERY));
};
