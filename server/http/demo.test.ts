import {
  type Answers,
  type AssetRow,
  type ChecklistRow,
  canonicalize,
  type DefectRow,
  type DueRow,
  type HistoryEntry,
  type Page,
  type PersonRow,
  type PlaceRow,
  type SiteBundle,
} from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { entries, entryDocs } from "../store/schema/log.ts";
import { devices } from "../store/schema/register.ts";
import { createContext } from "../usecases/context.ts";
import { ASSETS } from "../usecases/demo/assets.ts";
import { EXAMPLE_ONLY } from "../usecases/demo/checklists/parts.ts";
import { checkOf, KIND_NAMES, KINDS, OTHERS } from "../usecases/demo/kinds.ts";
import { findProblems } from "../usecases/find-problems.ts";
import { judgeFor } from "../usecases/judge-for.ts";
import { NO_BLOCKS } from "../usecases/known-blocks.ts";
import { readLog } from "../usecases/read-history.ts";
import { rebuild } from "../usecases/rebuild.ts";
import { verifySignature } from "../usecases/verify-signature.ts";
import { warmUp } from "../usecases/warm-up.ts";
import { beginDemo, signIn, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
beforeAll(async () => {
  server = await startServer();
  // As a server does once it listens, long before anybody has typed a password.
  await warmUp();
  owner = await beginDemo(server);
}, 30_000);
afterAll(() => server.close());

const read = async <T>(path: string): Promise<T> => {
  const reply = await server.call("GET", path, { as: owner });
  expect(reply.status, path).toBe(200);
  return (await reply.json()) as T;
};
const numbers = (rows: readonly { number: string }[]) =>
  rows.map(({ number }) => number).toSorted();

describe("the checklists of the demo estate", () => {
  const names = [...KIND_NAMES, ...(Object.keys(OTHERS) as (keyof typeof OTHERS)[])];
  for (const name of names) {
    it(`${name} has nothing to mend, cautions first and a basis for every limit`, () => {
      const { checklist, problems } = findProblems(checkOf(name).document, NO_BLOCKS);
      expect(problems).toEqual([]);
      expect(checklist?.cautions?.[0]).toBe(EXAMPLE_ONLY);
      const limits = Object.values(checklist?.properties ?? {}).flatMap((one) => one.limits ?? []);
      expect(limits.length).toBeGreaterThanOrEqual(3);
      for (const limit of limits) expect(limit.basis).toMatch(/\w/);
    });
  }
});

describe("the demo estate", () => {
  it("has its people, who sign in with the password given, and its sites", async () => {
    const { rows } = await read<{ rows: PersonRow[] }>("/api/people");
    expect(rows.map(({ name, role }) => `${name}, ${role}`).toSorted()).toEqual([
      "Dag Ruskeen, inspector",
      "Isel Fairbrook, inspector",
      "Morwen Tolvane, manager",
      "Ona Owner, owner",
      "Pell Aldermoss, inspector",
    ]);
    for (const name of ["morwen", "dag", "isel", "pell"])
      expect(await signIn(server, name)).toMatch(/^rb_session=/);
    const places = await read<{ rows: PlaceRow[] }>("/api/places");
    const sites = places.rows.filter(({ level }) => level === "site").map(({ code }) => code);
    expect(sites).toEqual(["1", "4", "5", "7", "8"]);
  });

  it("has a few overdue and a few due today", async () => {
    const due = await read<Page<DueRow>>("/api/due?limit=200");
    const checks = ASSETS.map(({ kind }) => 1 + KINDS[kind].others.length);
    expect(due.rows).toHaveLength(checks.reduce((sum, one) => sum + one));
    expect(numbers(due.rows.filter(({ status }) => status === "overdue"))).toEqual([
      "4012",
      "4059",
      "7062",
    ]);
    expect(numbers(due.rows.filter((row) => row.due === "2026-10-13"))).toEqual([
      "1022",
      "1061",
      "4058",
    ]);
  });

  it("excuses what is closed for the winter, and lets it be used again only after a check", async () => {
    const of = async (on: string, status: string) =>
      (await read<Page<DueRow>>(`/api/due?limit=200&on=${on}&status=${status}`)).rows;
    const excused = await of("2026-12-15", "excused");
    expect(numbers(excused)).toEqual(["5061", "5062", "5063"]);
    expect(excused.every(({ closure }) => closure?.reopens === "2027-04-01")).toBe(true);
    expect(numbers(await of("2027-03-31", "blocked"))).toEqual(["5051"]);
    const reopened = await of("2027-04-01", "blocked");
    expect(numbers(reopened)).toEqual(["5051", "5061", "5062", "5063"]);
  });

  it("expects the vehicles' services by what they are driven", async () => {
    const { rows } = await read<Page<DueRow>>("/api/due?limit=200&assetType=vehicle");
    const services = rows.filter(({ intervalTitle }) => intervalTitle === "Vehicle, service");
    expect(services.map(({ why }) => why.code)).toEqual(["by-usage", "by-usage", "by-usage"]);
    for (const { due, latest } of services) expect(due <= latest).toBe(true);
  });

  it("tells what its limits and readings are made for", async () => {
    const due = await read<Page<DueRow>>("/api/due?limit=200");
    const verdicts = new Map(due.rows.map(({ number, lastVerdict }) => [number, lastVerdict]));
    expect(verdicts.get("4031")).toBe("advisory");
    expect(verdicts.get("4033")).toBe("pass");
    expect(verdicts.get("4067")).toBe("fail");
    const { asset } = await read<{ asset: AssetRow }>("/api/assets/number:4067");
    const history = await read<Page<HistoryEntry>>(`/api/assets/${asset.id}/history`);
    const last = history.rows.find(({ entry }) => entry.kind === "inspection");
    // 0.1 Ohm for joints plus 10 m of 1.5 mm²: 0.0133 Ohm/m, IEC 60228 class 5 at 20 °C.
    expect(last?.leaf.judgement?.points.earth_continuity?.bound).toBe(0.233);
    expect(history.rows.at(-1)?.entry.kind).toBe("registered");
  });

  it("has open defects of each step, and the ones put right long ago are closed", async () => {
    const defects = await read<Page<DefectRow>>("/api/defects?open=1");
    const steps = defects.rows.map(({ assetNumber, step }) => `${assetNumber} ${step}`);
    expect(steps.toSorted()).toEqual([
      "1015 made-safe",
      "4058 raised",
      "4067 repaired",
      "7064 raised",
      "7104 made-safe",
    ]);
    const past = (await read<Page<DefectRow>>("/api/defects?open=0")).rows;
    expect(past.map(({ step }) => step)).toEqual(["verified", "verified"]);
  });

  it("was sealed without a flag, each entry soon after it happened", async () => {
    const reply = await server.call("GET", "/api/export", { as: owner });
    const lines = (await reply.text()).trim().split("\n");
    const log = lines.map((line) => JSON.parse(line) as HistoryEntry);
    expect(log.map(({ leaf }) => leaf.seq)).toEqual(log.map((_, index) => index + 1));
    expect(log.filter(({ leaf }) => leaf.flags.length > 0)).toEqual([]);
    const inspections = log.filter(({ entry }) => entry.kind === "inspection");
    expect(inspections.length).toBeGreaterThan(300);
    const received = log.map(({ leaf }) => leaf.receivedAt);
    expect(received.toSorted()).toEqual(received);
    for (const { entry, leaf } of inspections) {
      const late = Date.parse(leaf.receivedAt) - Date.parse(entry.happenedAt ?? "");
      expect(late).toBeGreaterThanOrEqual(0);
      expect(late).toBeLessThan(12 * 3_600_000);
      expect(entry.happenedAt?.slice(0, 10)).toBe(entry.civilDate);
    }
  });

  it("carries signatures that verify, and judgements that come out the same again", async () => {
    const rows = await server.store.db
      .select({ key: devices.key, hash: entries.hash, signature: entryDocs.signature })
      .from(entries)
      .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
      .innerJoin(devices, eq(devices.id, entries.device));
    expect(rows.length).toBeGreaterThan(300);
    const bad = rows.filter((row) => !verifySignature(row.key, row.hash, row.signature ?? ""));
    expect(bad).toEqual([]);
    const ctx = createContext({ store: server.store, clock: () => server.now, newId: () => "" });
    for await (const { entry, leaf } of readLog(ctx)) {
      if (entry.kind !== "inspection") continue;
      const { checklist, particulars, answers } = entry.body;
      const judge = await judgeFor(ctx, server.store.db, checklist.hash);
      const again = judge.judge({ particulars, answers: answers as Answers });
      expect(canonicalize(again)).toBe(canonicalize(leaf.judgement));
    }
  });

  it("gives a device all it needs for one site, and nothing again while nothing changed", async () => {
    const places = await read<{ rows: PlaceRow[] }>("/api/places");
    const site = places.rows.find(({ code }) => code === "4")?.id ?? "";
    const reply = await server.call("GET", `/api/sites/${site}/bundle`, { as: owner });
    const bundle = (await reply.json()) as SiteBundle;
    expect(numbers(bundle.assets)).toEqual(numbers(ASSETS.filter(({ room }) => room[0] === "4")));
    const used = new Set(bundle.due.map(({ checklist }) => checklist));
    expect(new Set(bundle.checklists.map(({ id }: ChecklistRow) => id))).toEqual(used);
    const again = await server.app.request(`/api/sites/${site}/bundle`, {
      headers: { cookie: owner, "if-none-match": reply.headers.get("etag") ?? "" },
    });
    expect(again.status).toBe(304);
    expect(await again.text()).toBe("");
  });

  it("brings a site to a device compressed", async () => {
    const places = await read<{ rows: PlaceRow[] }>("/api/places");
    const site = places.rows.find(({ code }) => code === "4")?.id ?? "";
    const reply = await server.app.request(`/api/sites/${site}/bundle`, {
      headers: { cookie: owner, "accept-encoding": "gzip" },
    });
    expect([reply.status, reply.headers.get("content-encoding")]).toEqual([200, "gzip"]);
  });

  it("gives the same rows when its projections are derived again from the log", async () => {
    const paths = ["/api/due?limit=200", "/api/defects", "/api/assets?limit=200", "/api/places"];
    const before = await Promise.all(paths.map((path) => read(path)));
    const { store } = server;
    const ctx = createContext({ store, clock: () => server.now, newId: () => "" });
    const { entries } = await rebuild(ctx);
    expect(entries).toBeGreaterThan(400);
    expect(await Promise.all(paths.map((path) => read(path)))).toEqual(before);
  });
});
