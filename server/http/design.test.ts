import type { AssetTypeRow, ChecklistRow, DraftRow } from "@roundbook/schemas";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { LADDER } from "../usecases/demo/checklists/ladder.ts";
import { addRole, beginOwn, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let manager: string;
beforeAll(async () => {
  server = await startServer();
  manager = await addRole(server, await beginOwn(server), "manager");
});
afterAll(() => server.close());

async function ask<T>(method: string, path: string, status: number, body?: unknown): Promise<T> {
  const reply = await server.call(method, path, { as: manager, body });
  const text = await reply.text();
  expect(reply.status, `${method} ${path} ${text}`).toBe(status);
  return (text === "" ? undefined : JSON.parse(text)) as T;
}
const draftOf = (document: object, checklist?: string) =>
  ask<DraftRow>("POST", "/api/drafts", 201, { document, checklist });
const issue = (draft: DraftRow) =>
  ask<{ id: string; issue: number; hash: string }>(
    "POST",
    `/api/drafts/${draft.checklist}/issue`,
    200,
    { revision: draft.revision, reason: "Test" },
  );

describe("a draft", () => {
  it("may be anything yet, and tells what stands in its way", async () => {
    const draft = await draftOf({ title: "Half" });
    expect(draft.revision).toBe(1);
    expect(draft.lastIssue).toBe(0);
    expect(draft.problems.length).toBeGreaterThan(0);
    await ask("DELETE", `/api/drafts/${draft.checklist}`, 204);
    await ask("GET", `/api/drafts/${draft.checklist}`, 404);
  });

  it("that another saved meanwhile is not overwritten: the other comes back with the refusal", async () => {
    const draft = await draftOf({ title: "One" });
    const path = `/api/drafts/${draft.checklist}`;
    const saved = await ask<DraftRow>("PUT", path, 200, {
      revision: 1,
      document: { title: "Two" },
    });
    expect(saved.revision).toBe(2);
    const stale = await ask<{ code: string; current: DraftRow }>("PUT", path, 409, {
      revision: 1,
      document: { title: "Three" },
    });
    expect(stale.current).toMatchObject({ revision: 2, document: { title: "Two" } });
    expect((await ask<DraftRow>("GET", path, 200)).document).toEqual({ title: "Two" });
    const second = { checklist: draft.checklist, document: {} };
    expect(await ask("POST", "/api/drafts", 409, second)).toMatchObject({ code: "draft-exists" });
  });
});

describe("issuing", () => {
  it("makes an immutable issue known by its hash, and closes the draft", async () => {
    const draft = await draftOf(LADDER);
    const first = await issue(draft);
    expect(first).toMatchObject({ id: draft.checklist, issue: 1 });
    await ask("GET", `/api/drafts/${draft.checklist}`, 404);
    const row = await ask<ChecklistRow>("GET", `/api/checklists/${first.hash}`, 200);
    expect(row).toMatchObject({ issue: 1, status: "issued", title: LADDER.title });
    expect(Object.keys(row.document.$defs ?? {})).toContain("check");
  });

  it("a point that was another kind of point in an earlier issue is refused and named", async () => {
    const first = await issue(await draftOf({ ...LADDER, title: "Ladder of old" }));
    const properties = LADDER.properties as Record<string, unknown>;
    const [name = ""] = Object.keys(properties);
    const other = { $ref: "#/$defs/text", title: "Remarks" };
    const document = { ...LADDER, properties: { ...properties, [name]: other } };
    const { revision } = await draftOf(document, first.id);
    expect(await ask("POST", `/api/drafts/${first.id}/issue`, 422, { revision })).toMatchObject({
      problems: [{ pointer: `/properties/${name}`, code: "point-reused", params: { issue: 1 } }],
    });
    await ask("GET", `/api/drafts/${first.id}`, 200);
  });

  it("the same content as the newest issue is refused, other content is the next issue", async () => {
    const first = await issue(await draftOf({ ...LADDER, title: "Ladder two" }));
    const same = await draftOf({ ...LADDER, title: "Ladder two" }, first.id);
    const refused = await ask<{ code: string }>("POST", `/api/drafts/${first.id}/issue`, 409, {
      revision: same.revision,
    });
    expect(refused.code).toBe("same-as-newest-issue");
    const changed = { revision: same.revision, document: { ...LADDER, title: "Ladder three" } };
    const next = await ask<DraftRow>("PUT", `/api/drafts/${first.id}`, 200, changed);
    expect(next.lastIssue).toBe(1);
    expect(await issue(next)).toMatchObject({ id: first.id, issue: 2 });
    const old = await ask<ChecklistRow>("GET", `/api/checklists/${first.hash}`, 200);
    expect(old.title).toBe("Ladder two");
    const rows = (await ask<{ rows: ChecklistRow[] }>("GET", "/api/checklists", 200)).rows;
    expect(rows.filter(({ id }) => id === first.id).map((row) => row.issue)).toEqual([2]);
    const every = await ask<{ rows: ChecklistRow[] }>("GET", `/api/checklists?of=${first.id}`, 200);
    expect(every.rows.map(({ issue, title }) => [issue, title])).toEqual([
      [2, "Ladder three"],
      [1, "Ladder two"],
    ]);
  });

  it("two managers pressing at once make one issue", async () => {
    const draft = await draftOf({ ...LADDER, title: "At once" });
    const path = `/api/drafts/${draft.checklist}/issue`;
    const body = { revision: draft.revision };
    const replies = await Promise.all(
      [1, 2].map(() => server.call("POST", path, { as: manager, body })),
    );
    expect(replies.map(({ status }) => status).toSorted()).toEqual([200, 404]);
  });

  it("a withdrawn checklist is so once, and its issues stay readable", async () => {
    const { id, hash } = await issue(await draftOf({ ...LADDER, title: "Withdrawn" }));
    await ask("POST", `/api/checklists/${id}/withdraw`, 204, { reason: "Replaced" });
    await ask("POST", `/api/checklists/${id}/withdraw`, 409, { reason: "Replaced" });
    const row = await ask<ChecklistRow>("GET", `/api/checklists/${hash}`, 200);
    expect(row.status).toBe("withdrawn");
  });
});

describe("asset types and intervals", () => {
  it("a type that another changed meanwhile is not written over: theirs comes back with the refusal", async () => {
    const type = { assetType: "steps", title: "Steps", particulars: {}, checklists: [] };
    const path = "/api/asset-types/steps";
    await ask("PUT", path, 200, { ...type, version: 0 });
    const theirs = { ...type, title: "Theirs" };
    expect(await ask("PUT", path, 200, { ...theirs, version: 1 })).toEqual({ version: 2 });
    const stale = { ...type, title: "Mine", version: 1 };
    expect(await ask("PUT", path, 409, stale)).toMatchObject({
      code: "asset-type-changed-meanwhile",
      current: { ...theirs, version: 2 },
    });
    expect(await ask("PUT", path, 409, { ...stale, version: 0 })).toMatchObject({
      code: "asset-type-exists",
      current: { version: 2 },
    });
    expect(await ask("PUT", path, 409, { ...stale, version: 3 })).toMatchObject({
      code: "asset-type-changed-meanwhile",
    });
    const { rows } = await ask<{ rows: AssetTypeRow[] }>("GET", "/api/asset-types", 200);
    expect(rows.find((row) => row.assetType === "steps")?.title).toBe("Theirs");
    // Sent twice because the reply was lost: it is so already.
    expect(await ask("PUT", path, 200, { ...theirs, version: 1 })).toEqual({ version: 2 });
    expect(await ask("PUT", path, 200, { ...stale, version: 2 })).toEqual({ version: 3 });
  });

  it("a type without the version it follows is refused", async () => {
    const type = { assetType: "stairs", title: "Stairs", particulars: {}, checklists: [] };
    expect(await ask("PUT", "/api/asset-types/stairs", 422, type)).toMatchObject({
      code: "body-not-right",
      problems: [{ code: "missing-keyword", params: { keyword: "version" } }],
    });
  });

  it("of two managers pressing at once one is refused", async () => {
    const type = { assetType: "stool", particulars: {}, checklists: [], version: 0 };
    const replies = await Promise.all(
      ["Stool", "Footstool"].map((title) =>
        server.call("PUT", "/api/asset-types/stool", { as: manager, body: { ...type, title } }),
      ),
    );
    expect(replies.map(({ status }) => status).toSorted()).toEqual([200, 409]);
  });

  it("a changed type is the next version, an unchanged one stays, and its checklists must exist", async () => {
    const { id } = await issue(await draftOf({ ...LADDER, title: "For types" }));
    const type = {
      assetType: "ladder",
      title: "Ladder",
      particulars: {},
      checklists: [id],
      version: 0,
    };
    expect(await ask("PUT", "/api/asset-types/ladder", 200, type)).toEqual({ version: 1 });
    expect(await ask("PUT", "/api/asset-types/ladder", 200, type)).toEqual({ version: 1 });
    const renamed = { ...type, title: "Ladders", version: 1 };
    expect(await ask("PUT", "/api/asset-types/ladder", 200, renamed)).toEqual({ version: 2 });
    const unknown = { ...type, checklists: [id, "00000000-0000-7000-8000-000000000000"] };
    expect(await ask("PUT", "/api/asset-types/ladder", 422, unknown)).toMatchObject({
      problems: [{ pointer: "/checklists/1", code: "unknown-checklist" }],
    });
    expect(await ask("PUT", "/api/asset-types/steps", 422, type)).toMatchObject({
      problems: [{ pointer: "/assetType", code: "name-differs" }],
    });

    const rule = { kind: "from-last-done", every: "P6M" };
    const interval = { title: "Half-yearly", assetType: "ladder", checklist: id, rule };
    const set = await ask<{ id: string }>("POST", "/api/intervals", 201, interval);
    await ask("PUT", `/api/intervals/${set.id}`, 204, { ...interval, title: "Every six months" });
    const byResult = { ...interval, rule: { kind: "by-result", score: "condition" } };
    expect(await ask("POST", "/api/intervals", 422, byResult)).toMatchObject({
      problems: [{ pointer: "/rule/score", code: "unknown-score", params: { known: [] } }],
    });
    const endless = { ...interval, rule: { kind: "from-last-done", every: "P0M" } };
    expect(await ask("POST", "/api/intervals", 422, endless)).toMatchObject({
      problems: [{ pointer: "/rule/every", code: "duration-of-nothing" }],
    });
    await ask("DELETE", `/api/intervals/${set.id}`, 204);
    await ask("DELETE", `/api/intervals/${set.id}`, 404);
  });
});
