import type { AssetRow, Page, PlaceRow, Problem } from "@roundbook/schemas";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { entries } from "../store/schema/log.ts";
import { LADDER } from "../usecases/demo/checklists/ladder.ts";
import { beginDemo, signIn, startServer, type TestServer } from "./testing/server.ts";

const POINTS = LADDER.properties as Readonly<Record<string, object>>;
let server: TestServer;
let manager: string;
let sealed: number;
beforeAll(async () => {
  server = await startServer();
  await beginDemo(server);
  manager = await signIn(server, "morwen");
}, 30_000);
afterAll(() => server.close());

const count = async () => (await server.store.db.select({ seq: entries.seq }).from(entries)).length;
beforeEach(async () => {
  sealed = await count();
});
afterEach(async () => {
  expect(await count(), "nothing was sealed").toBe(sealed);
  expect((await server.call("GET", "/api/session")).status, "the server still answers").toBe(200);
  expect(server.reported, "no error of our own").toEqual([]);
});

type Refused = { status: number; code: string; problems: readonly Problem[] };

async function send(
  method: string,
  path: string,
  text: string | Uint8Array<ArrayBuffer>,
  type = "application/json",
) {
  const headers = { cookie: manager, "content-type": type };
  const reply = await server.app.request(path, { method, headers, body: text });
  return (await reply.json()) as Refused;
}
const post = (path: string, body: unknown) => send("POST", path, JSON.stringify(body));

async function issue(document: object): Promise<Refused> {
  const { checklist, revision } = (await post("/api/drafts", { document })) as unknown as {
    checklist: string;
    revision: number;
  };
  return post(`/api/drafts/${checklist}/issue`, { revision });
}
const nested = (depth: number): unknown => {
  let value: unknown = 1;
  for (let level = 0; level < depth; level += 1) value = { deeper: value };
  return value;
};

describe("a checklist that is not right is refused when it is issued", () => {
  it("an unknown keyword is named where it stands, with the nearest known one", async () => {
    const feet = {
      ...POINTS,
      feet: { $ref: "#/$defs/check", title: "Feet", limts: [] },
    };
    const refused = await issue({ ...LADDER, properties: feet });
    expect(refused).toMatchObject({ status: 422, code: "checklist-not-right" });
    expect(refused.problems).toContainEqual({
      pointer: "/properties/feet/limts",
      code: "unknown-keyword",
      params: { keyword: "limts", nearest: "limits" },
    });
  });

  it("a limit with an unknown name is named by its formula's place", async () => {
    const gap = {
      $ref: "#/$defs/reading",
      title: "Gap",
      quantity: { unit: "mm" },
      limits: [{ max: "asset.lenght * 2", severity: "fail", basis: "x" }],
    };
    const refused = await issue({ ...LADDER, properties: { ...POINTS, gap } });
    expect(refused.status).toBe(422);
    expect(refused.problems.map(({ code }) => code)).toContain("unknown-name");
    expect(refused.problems.map(({ pointer }) => pointer)).toContain(
      "/properties/gap/limits/0/max",
    );
  });

  it("something that is no checklist at all", async () => {
    expect(await issue({ hello: "there" })).toMatchObject({ status: 422 });
  });
});

describe("a body that cannot be read is refused before anything looks into it", () => {
  it("malformed JSON is refused with line and column", async () => {
    const refused = await send("POST", "/api/drafts", '{\n  "document": {,}\n}');
    expect(refused).toMatchObject({ status: 400, code: "not-json" });
    expect(refused.problems).toEqual([
      { pointer: "", code: "json-syntax", params: { line: 2, column: 16 } },
    ]);
  });

  it("more than a megabyte is refused, announced or not", async () => {
    const text = JSON.stringify({ document: { title: "x".repeat(1_100_000) } });
    expect(await send("POST", "/api/drafts", text)).toMatchObject({ status: 413 });
    const stream = new Blob([text]).stream();
    const request = new Request("http://localhost/api/drafts", {
      method: "POST",
      headers: { cookie: manager, "content-type": "application/json" },
      body: stream,
      duplex: "half",
    } as RequestInit);
    const reply = await server.app.request(request);
    expect(await reply.json()).toMatchObject({
      status: 413,
      problems: [{ code: "document-too-big", params: { limit: 1_048_576 } }],
    });
  });

  it("a checklist deeper than 32 levels is refused, and a hundred thousand do no harm", async () => {
    const shallow = await issue({ ...LADDER, $defs: { odd: nested(31) } });
    expect(shallow.problems?.map(({ code }) => code)).toContain("document-too-deep");
    const deep = `{"document":${'{"a":'.repeat(100_000)}1${"}".repeat(100_000)}}`;
    const refused = await send("POST", "/api/drafts", deep);
    expect(refused).toMatchObject({ status: 422, code: "body-not-right" });
    expect(refused.problems[0]?.code).toBe("document-too-deep");
  });

  it("another kind of content, broken UTF-8 and prototype names", async () => {
    expect(await send("POST", "/api/drafts", "a=1", "text/plain")).toMatchObject({ status: 415 });
    const broken = new Uint8Array([0x22, 0xff, 0x22]);
    expect(await send("POST", "/api/drafts", broken)).toMatchObject({
      status: 400,
      code: "not-utf8",
    });
    const sly = '{"__proto__":{"document":{}},"constructor":1}';
    const refused = await send("POST", "/api/drafts", sly);
    expect(refused.status).toBe(422);
    expect(refused.problems.map(({ pointer }) => pointer)).toContain("");
  });
});

describe("parameters that do not fit are named", () => {
  it("half a character or a NUL, which no log could keep whole", async () => {
    for (const name of ["half \ud83d", "cut\0here"])
      expect(
        await post("/api/places", { parent: null, level: "site", code: "9", name }),
      ).toMatchObject({ status: 422, problems: [{ pointer: "/name", code: "bad-text" }] });
  });

  it("in the query", async () => {
    const places: [string, string, string][] = [
      ["/api/due?on=2026-13-01", "/on", "bad-format"],
      ["/api/due?on=2026-02-30", "/on", "no-such-date"],
      ["/api/due/count?on=2026-02-30", "/on", "no-such-date"],
      [
        "/api/sites/00000000-0000-7000-8000-000000000000/history?after=0&from=2026-02-30",
        "/from",
        "no-such-date",
      ],
      ["/api/plan?on=2027-02-29", "/on", "no-such-date"],
      ["/api/plan?on=9999-12-31", "/on", "beyond-the-calendar"],
      ["/api/due?limit=100000", "/limit", "bad-format"],
      ["/api/due?status=late", "/status", "not-allowed"],
      ["/api/due?sit=1", "/sit", "unknown-keyword"],
      ["/api/assets?site=4", "/site", "bad-format"],
    ];
    for (const [path, pointer, code] of places) {
      const reply = await server.call("GET", path, { as: manager });
      expect(reply.status, path).toBe(422);
      const { problems } = (await reply.json()) as Refused;
      expect(
        problems.map((one) => [one.pointer, one.code]),
        path,
      ).toEqual([[pointer, code]]);
    }
    const cursor = await server.call("GET", "/api/logbook?cursor=abc", { as: manager });
    expect([cursor.status, ((await cursor.json()) as Refused).code]).toEqual([400, "bad-cursor"]);
  });

  it("in an asset registered at the desk", async () => {
    const { rows } = (await (await server.call("GET", "/api/places", { as: manager })).json()) as {
      rows: PlaceRow[];
    };
    const place = rows.find(({ level }) => level === "room")?.id ?? "";
    const lead = {
      number: "4033",
      assetType: "extension_lead",
      description: "Lead",
      place,
      particulars: { length: 500, csa: 1.5, colour: "red" },
    };
    const refused = await post("/api/assets", lead);
    expect(refused).toMatchObject({ status: 422, code: "asset-not-right" });
    expect(refused.problems.map(({ pointer, code }) => `${pointer} ${code}`).toSorted()).toEqual([
      "/number number-taken",
      "/particulars/colour unknown-particular",
      "/particulars/length particular-too-large",
    ]);
    const nowhere = { ...lead, number: "1", assetType: "boat", place: "0", particulars: {} };
    expect(await post("/api/assets", nowhere)).toMatchObject({ status: 422 });
    const found = await server.call("GET", "/api/assets?q=4033", { as: manager });
    expect(((await found.json()) as Page<AssetRow>).rows).toHaveLength(1);
  });
});
