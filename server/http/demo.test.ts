import type {
  AssetRow,
  DefectRow,
  DueRow,
  HistoryEntry,
  Page,
  PlaceRow,
  SiteBundle,
} from "@roundbook/schemas";
import { afterAll, beforeAll, expect, it } from "vitest";
import { beginDemo, signIn, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
let took: number;

beforeAll(async () => {
  server = await startServer();
  const began = performance.now();
  owner = await beginDemo(server);
  took = performance.now() - began;
}, 30_000);
afterAll(() => server.close());

const read = async <T>(path: string, as = owner): Promise<T> => {
  const reply = await server.call("GET", path, { as });
  expect(reply.status, path).toBe(200);
  return (await reply.json()) as T;
};

it("the demo estate opens within three seconds", () => {
  console.log(took);
  expect(took).toBeLessThan(3_000);
});

it("debug", async () => {
  const due = await read<Page<DueRow>>("/api/due?limit=20");
  console.table(
    due.rows.map((r) => [
      r.number,
      r.description,
      r.due,
      r.latest,
      r.status,
      r.lastDone,
      r.lastVerdict,
    ]),
  );
  console.log(await read("/api/due/count"));
  const defects = await read<Page<DefectRow>>("/api/defects?open=1");
  console.table(
    defects.rows.map((r) => [r.number, r.assetNumber, r.title, r.grade, r.by, r.raisedOn, r.step]),
  );
  const log = await read<Page<HistoryEntry>>("/api/logbook?limit=1");
  console.log(JSON.stringify(log.rows[0]));
  const places = await read<{ rows: PlaceRow[] }>("/api/places");
  const site = places.rows.find((p) => p.code === "4");
  const b = await read<SiteBundle>(`/api/sites/${site?.id}/bundle`);
  console.log(
    b.assets.length,
    b.due.length,
    b.lastResults.length,
    b.cursor,
    b.today,
    JSON.stringify(b).length,
  );
  const { asset } = await read<{ asset: AssetRow }>("/api/assets/number:4033");
  const h = await read<Page<HistoryEntry>>(`/api/assets/${asset.id}/history`);
  console.log(
    h.rows.map((r) => [
      r.entry.kind,
      r.entry.civilDate,
      r.authorName,
      r.leaf.flags,
      r.leaf.judgement?.overall,
    ]),
  );
  await signIn(server, "dag");
});
