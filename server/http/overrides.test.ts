import type { AssetRow, DueRow, HistoryEntry, OverrideRow, Page } from "@roundbook/schemas";
import { afterAll, beforeAll, expect, it } from "vitest";
import { beginDemo, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
beforeAll(async () => {
  server = await startServer();
  owner = await beginDemo(server);
}, 30_000);
afterAll(() => server.close());

interface Found {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly overrides: readonly OverrideRow[];
}
const find = async (number: string): Promise<Found> =>
  (await (await server.call("GET", `/api/assets/number:${number}`, { as: owner })).json()) as Found;
const send = (method: string, path: string, body: object) =>
  server.call(method, path, { as: owner, body });

it("one asset follows a rule of its own, with its reason, until it is ended", async () => {
  const before = await find("4013");
  const [row] = before.due;
  if (row === undefined) throw new Error("4013 is due by nothing");
  const path = `/api/assets/${before.asset.id}/overrides/${row.interval}`;
  const rule = { kind: "from-last-done", every: "P1M" };
  const reason = "Used outdoors every day";
  expect((await send("PUT", path, { rule, reason })).status).toBe(204);
  const own = await find("4013");
  expect(own.overrides).toEqual([
    { asset: before.asset.id, interval: row.interval, rule, reason, until: null },
  ]);
  expect(own.due[0]?.why.moved?.at(-1)).toMatchObject({ code: "override", params: { reason } });
  expect((own.due[0]?.due ?? "") < row.due).toBe(true);

  expect((await send("DELETE", path, { reason: "Used indoors again" })).status).toBe(204);
  const after = await find("4013");
  expect(after.due).toEqual(before.due);
  expect(after.overrides).toEqual([]);
  expect((await send("DELETE", path, { reason: "Twice" })).status).toBe(404);
  const history = (await (
    await server.call("GET", `/api/assets/${before.asset.id}/history`, { as: owner })
  ).json()) as Page<HistoryEntry>;
  expect(history.rows.slice(0, 2).map(({ entry }) => entry.kind)).toEqual([
    "override-ended",
    "interval-overridden",
  ]);
});

it("an impossible rule of its own is refused at its place", async () => {
  const { asset, due } = await find("4013");
  const path = `/api/assets/${asset.id}/overrides/${due[0]?.interval}`;
  const rule = { kind: "from-last-done", every: "P0D" };
  const reply = await send("PUT", path, { rule, reason: "None", until: "2026-02-30" });
  expect(reply.status).toBe(422);
  expect(((await reply.json()) as { problems: object[] }).problems).toMatchObject([
    { pointer: "/rule/every", code: "duration-of-nothing" },
    { pointer: "/until", code: "no-such-date" },
  ]);
});

it("particulars are said anew with a reason; what its type does not allow is refused", async () => {
  const { asset } = await find("4033");
  const path = `/api/assets/${asset.id}/particulars`;
  const particulars = { ...asset.particulars, length: 8 };
  expect((await send("PUT", path, { particulars, reason: "Cut and rewired" })).status).toBe(204);
  expect((await find("4033")).asset.particulars).toEqual(particulars);
  const wrong = await send("PUT", path, {
    particulars: { ...particulars, length: 5000 },
    reason: "Slip",
  });
  expect(wrong.status).toBe(422);
  expect(((await wrong.json()) as { problems: object[] }).problems).toMatchObject([
    { pointer: "/particulars/length" },
  ]);
});
