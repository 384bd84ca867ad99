import { createClient } from "@libsql/client";
import { getTableConfig } from "drizzle-orm/sqlite-core";
import { expect, it, onTestFinished } from "vitest";
import { accounts, blocks, drafts, estate, evidence, sessions } from "./schema/estate.ts";
import { contents, entries, entryDocs, logState } from "./schema/log.ts";
import { tempFile, tempStore } from "./testing/temp-store.ts";

const HEAD = "'inspection','a','p','d',1,1,1,'h','',null";
const COLUMNS = "seq,id,kind,asset,author,device,civil_date,at,received_at,hash,flags,delivered_by";

/** A raw connection to a store's file: whatever program writes, the database itself refuses. */
async function raw() {
  const url = tempFile();
  await tempStore(url);
  const client = createClient({ url });
  onTestFinished(() => client.close());
  const run = (sql: string) => client.execute(sql);
  await run(`insert into entries (${COLUMNS}) values (1,'one',${HEAD})`);
  await run("insert into entry_docs (seq,entry,leaf) values (1,'{}','{}')");
  return { run };
}

it.each([
  ["an entry is never changed", "update entries set hash = 'x'"],
  ["an entry is never removed", "delete from entries"],
  [
    "an entry's place is never taken by another",
    `insert or replace into entries (${COLUMNS}) values (1,'two',${HEAD})`,
  ],
  [
    "an entry's id is never sealed again",
    `insert or replace into entries (${COLUMNS}) values (2,'one',${HEAD})`,
  ],
  [
    "an upsert changes no entry",
    `insert into entries (${COLUMNS}) values (1,'one',${HEAD}) on conflict do update set hash = 'x'`,
  ],
  ["no sequence number is left out", `insert into entries (${COLUMNS}) values (3,'three',${HEAD})`],
  ["a document is never changed", "update entry_docs set entry = '{\"a\":1}'"],
  ["a document is never removed", "delete from entry_docs"],
  [
    "a document is never replaced",
    "insert or replace into entry_docs (seq,entry,leaf) values (1,'{\"a\":1}','{}')",
  ],
  ["the log never shrinks", "update log_state set size = -1"],
  ["the state of the log is never removed", "delete from log_state"],
  [
    "the log has one state",
    "insert or replace into log_state (one,size,frontier) values (1,0,'[]')",
  ],
])("%s", async (_, statement) => {
  const { run } = await raw();
  await expect(run(statement)).rejects.toThrow(/append-only|without a gap|only grows|one state/);
  const { rows } = await run("select id, hash, entry from entries join entry_docs using (seq)");
  expect(rows.map((row) => ({ ...row }))).toEqual([{ id: "one", hash: "h", entry: "{}" }]);
});

it("a replay that asks first adds nothing and fails at nothing", async () => {
  const { run } = await raw();
  await run(
    `insert into entries (${COLUMNS}) select 1,'one',${HEAD}
     where not exists (select 1 from entries where id = 'one')`,
  );
  const { rows } = await run("select count(*) as n from entries");
  expect(rows[0]?.n).toBe(1);
});

it.each(
  [
    entries,
    entryDocs,
    logState,
    contents,
    estate,
    accounts,
    sessions,
    drafts,
    blocks,
    evidence,
  ].map((table) => [getTableConfig(table).name, table] as const),
)("the migrations make the table %s as the queries know it", async (name, table) => {
  const { run } = await raw();
  const { rows } = await run(`select name, type, "notnull", pk from pragma_table_info('${name}')`);
  const made = rows.map((row) => ({
    name: row.name,
    type: String(row.type).toLowerCase(),
    required: row.notnull === 1 || row.pk === 1,
    key: row.pk === 1,
  }));
  const known = getTableConfig(table).columns.map((column) => ({
    name: column.name,
    type: column.getSQLType(),
    required: column.notNull,
    key: column.primary,
  }));
  expect(made).toEqual(known);
});

it("reading connections cannot write", async () => {
  const store = await tempStore();
  await expect(store.db.delete(estate)).rejects.toMatchObject({
    cause: { code: "SQLITE_READONLY" },
  });
});
