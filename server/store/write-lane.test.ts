import { type Client, createClient } from "@libsql/client";
import { sql } from "drizzle-orm";
import { expect, it, onTestFinished } from "vitest";
import { isBusy } from "./busy.ts";
import { connect } from "./connect.ts";
import { tempFile } from "./testing/temp-store.ts";
import { openLane } from "./write-lane.ts";

const open = (url: string): Client => {
  const client = createClient({ url, concurrency: 1, timeout: 0 });
  onTestFinished(() => client.close());
  return client;
};

async function counted(url: string): Promise<number> {
  const fresh = open(url);
  const { rows } = await fresh.execute("select count(*) as n from t");
  return Number(rows[0]?.n);
}

async function prepared(): Promise<{ url: string; other: Client }> {
  const url = tempFile();
  const other = open(url);
  await other.execute("PRAGMA journal_mode=WAL");
  await other.execute("create table t (n integer)");
  return { url, other };
}

it("the client alone loses writes it acknowledged after it met a lock", async () => {
  const { url, other } = await prepared();
  const victim = open(url);
  const holder = await other.transaction("write");
  await expect(victim.execute("insert into t values (1)")).rejects.toSatisfy(isBusy);
  await holder.rollback();
  for (let n = 0; n < 5; n++) await victim.execute({ sql: "insert into t values (?)", args: [n] });
  victim.close();
  expect(await counted(url)).toBe(0);
});

it("a connection opened anew after the lock keeps what it acknowledges", async () => {
  const { url, other } = await prepared();
  const victim = open(url);
  const holder = await other.transaction("write");
  await expect(victim.execute("insert into t values (1)")).rejects.toSatisfy(isBusy);
  await holder.rollback();
  await victim.reconnect();
  for (let n = 0; n < 5; n++) await victim.execute({ sql: "insert into t values (?)", args: [n] });
  victim.close();
  expect(await counted(url)).toBe(5);
});

async function lane() {
  const { url, other } = await prepared();
  const connection = await connect({ url }, "write", 0);
  onTestFinished(() => connection.close());
  return { url, other, connection, ...openLane(connection) };
}

it("the lane waits out a lock, and what it acknowledges stands", async () => {
  const { url, other, write, connection } = await lane();
  const holder = await other.transaction("write");
  setTimeout(() => void holder.rollback(), 80);
  const units = Array.from({ length: 20 }, (_, n) =>
    write(async (tx) => {
      await tx.run(sql`insert into t values (${n})`);
      return n;
    }),
  );
  expect(await Promise.all(units)).toEqual(Array.from({ length: 20 }, (_, n) => n));
  connection.close();
  expect(await counted(url)).toBe(20);
});

it("a lock that is never given up is an error, and the lane goes on afterwards", async () => {
  const { url, other, write } = await lane();
  const holder = await other.transaction("write");
  const insert = () => write((tx) => tx.run(sql`insert into t values (1)`));
  await expect(insert()).rejects.toSatisfy(isBusy);
  await holder.rollback();
  await insert();
  expect(await counted(url)).toBe(1);
}, 20_000);

it("a unit that fails rolls back alone; its neighbours in the transaction stand", async () => {
  const { url, write } = await lane();
  const insert = (n: number, fails: boolean) =>
    write(async (tx) => {
      await tx.run(sql`insert into t values (${n})`);
      if (fails) throw new Error(`unit ${n}`);
      return n;
    });
  const settled = await Promise.allSettled([insert(1, false), insert(2, true), insert(3, false)]);
  expect(settled.map(({ status }) => status)).toEqual(["fulfilled", "rejected", "fulfilled"]);
  expect(await counted(url)).toBe(2);
});

it("work that waits together is committed together", async () => {
  const { write, connection } = await lane();
  let transactions = 0;
  const begin = connection.client.transaction.bind(connection.client);
  connection.client.transaction = () => {
    transactions++;
    return begin("write");
  };
  const unit = () => write((tx) => tx.run(sql`insert into t values (1)`));
  await Promise.all(Array.from({ length: 50 }, unit));
  expect(transactions).toBe(1);
});

it("every transaction has the PRAGMAs of its connection, also after a lock", async () => {
  const { other, write } = await lane();
  const holder = await other.transaction("write");
  setTimeout(() => void holder.rollback(), 30);
  const pragmas = await write(async (tx) => [
    await tx.all(sql`PRAGMA synchronous`),
    await tx.all(sql`PRAGMA foreign_keys`),
    await tx.all(sql`PRAGMA journal_mode`),
  ]);
  expect(pragmas).toEqual([[{ synchronous: 2 }], [{ foreign_keys: 1 }], [{ journal_mode: "wal" }]]);
});
