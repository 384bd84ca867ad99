import type { BlockRow, ChecklistRow, DraftRow } from "@roundbook/schemas";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createContext } from "../usecases/context.ts";
import { LADDER } from "../usecases/demo/checklists/ladder.ts";
import { rebuild } from "../usecases/rebuild.ts";
import { addRole, beginOwn, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
let manager: string;
beforeAll(async () => {
  server = await startServer();
  owner = await beginOwn(server);
  manager = await addRole(server, owner, "manager");
});
afterAll(() => server.close());

async function ask<T>(method: string, path: string, status: number, body?: unknown, as = manager) {
  const reply = await server.call(method, path, { as, body });
  const text = await reply.text();
  expect(reply.status, `${method} ${path} ${text}`).toBe(status);
  return (text === "" ? undefined : JSON.parse(text)) as T;
}

const plug = (title = "Is the plug whole?") => ({
  $ref: "#/$defs/check",
  title,
  limits: [{ accept: ["ok"], basis: "Common practice, no source" }],
  ask: { mandatory: true },
});
const blockOf = (name: string, title?: string, more = {}) => ({
  dialect: "urn:roundbook:block:1",
  name,
  title: "Plug and flex",
  points: { [`${name}_plug`]: plug(title) },
  ...more,
});
const keep = (block: { name: string }, revision = 0, status = 200) =>
  ask<BlockRow>("PUT", `/api/blocks/${block.name}`, status, { revision, block });
const draftOf = (names: readonly string[], title = "Ladder with blocks") =>
  ask<DraftRow>("POST", "/api/drafts", 201, {
    document: { ...LADDER, title, include: names.map((block) => ({ block })) },
  });
const issue = (draft: DraftRow, status = 200) =>
  ask<{ id: string; hash: string; problems: object[] }>(
    "POST",
    `/api/drafts/${draft.checklist}/issue`,
    status,
    { revision: draft.revision },
  );

describe("a block", () => {
  it("is kept under its name with its revision, and by whom", async () => {
    const kept = await keep(blockOf("kept"));
    expect(kept).toMatchObject({ name: "kept", revision: 1, block: blockOf("kept"), usedBy: [] });
    expect(await ask("GET", "/api/blocks/kept", 200)).toEqual(kept);
    const { rows } = await ask<{ rows: BlockRow[] }>("GET", "/api/blocks", 200);
    expect(rows.map(({ name }) => name)).toContain("kept");
    await ask("GET", "/api/blocks/none", 404);
  });

  it("that is not well formed is refused, each place named by its pointer, and nothing is kept", async () => {
    const bent = blockOf("bent", "", { points: { plug: { title: 3 } } });
    const refused = await ask<{ code: string; problems: { pointer: string }[] }>(
      "PUT",
      "/api/blocks/bent",
      422,
      { revision: 0, block: bent },
    );
    expect(refused.code).toBe("block-cannot-be-kept");
    expect(refused.problems.map(({ pointer }) => pointer)).toContain("/points/plug/title");
    await ask("GET", "/api/blocks/bent", 404);
    const other = { revision: 0, block: blockOf("other") };
    expect(await ask("PUT", "/api/blocks/another", 422, other)).toMatchObject({
      problems: [{ pointer: "/name", code: "name-differs" }],
    });
    const group = { id: "g", title: "G", points: ["twice_plug"] };
    const twice = { revision: 0, block: blockOf("twice", "P", { groups: [group, group] }) };
    expect((await ask<{ code: string }>("PUT", "/api/blocks/twice", 422, twice)).code).toBe(
      "block-cannot-be-kept",
    );
  });

  it("larger than a block is let be is refused", async () => {
    const wide = blockOf("wide", "x".repeat(300_000));
    const body = { revision: 0, block: wide };
    const reply = await server.call("PUT", "/api/blocks/wide", { as: manager, body });
    expect(reply.status).toBe(413);
  });

  it("edited by two managers: the second is refused with the first's words, and nothing is lost", async () => {
    await keep(blockOf("both"));
    const put = (title: string, as: string) =>
      server.call("PUT", "/api/blocks/both", {
        as,
        body: { revision: 1, block: blockOf("both", title) },
      });
    const replies = await Promise.all([put("The first's", owner), put("The second's", manager)]);
    expect(replies.map(({ status }) => status).toSorted()).toEqual([200, 409]);
    const kept = await ask<BlockRow>("GET", "/api/blocks/both", 200);
    expect(kept.revision).toBe(2);
    const refused = replies.find(({ status }) => status === 409);
    expect(await refused?.json()).toMatchObject({
      code: "block-changed-meanwhile",
      current: kept,
    });
    const again = await keep(blockOf("both"), 0, 409);
    expect(again).toMatchObject({ code: "block-exists", current: kept });
  });

  it("is removed only while no draft takes it in", async () => {
    await keep(blockOf("going"));
    const draft = await draftOf(["going"]);
    expect(await ask("DELETE", "/api/blocks/going", 409)).toMatchObject({ code: "block-in-use" });
    await ask("DELETE", `/api/drafts/${draft.checklist}`, 204);
    await ask("DELETE", "/api/blocks/going", 204);
    await ask("DELETE", "/api/blocks/going", 404);
  });
});

describe("a draft that takes a block in", () => {
  it("is issued standing alone: the points are in it and say their block, no include is left", async () => {
    await keep(blockOf("alone"));
    const draft = await draftOf(["alone"]);
    expect(draft.problems).toEqual([]);
    const { hash, id } = await issue(draft);
    const { document } = await ask<ChecklistRow>("GET", `/api/checklists/${hash}`, 200);
    expect(document.include).toBeUndefined();
    expect(document.properties.alone_plug).toMatchObject({ ...plug(), block: "alone" });
    const { usedBy } = await ask<BlockRow>("GET", "/api/blocks/alone", 200);
    expect(usedBy).toEqual([{ checklist: id, title: "Ladder with blocks", issue: 1 }]);
  });

  it("sees a block as it is now; what was issued before does not change", async () => {
    await keep(blockOf("moves", "Old words?"));
    const first = await issue(await draftOf(["moves"], "Moves"));
    const draft = await draftOf(["moves"], "Moves on");
    await keep(blockOf("moves", "New words?"), 1);
    const second = await issue(draft);
    const titles = await Promise.all(
      [first, second].map(async ({ hash }) => {
        const row = await ask<ChecklistRow>("GET", `/api/checklists/${hash}`, 200);
        return row.document.properties.moves_plug?.title;
      }),
    );
    expect(titles).toEqual(["Old words?", "New words?"]);
  });

  it("is not issued with a block changed since it was looked at", async () => {
    await keep(blockOf("seen", "Old words?"));
    const { checklist, revision } = await draftOf(["seen"]);
    await keep(blockOf("seen", "New words?"), 1);
    const path = `/api/drafts/${checklist}/issue`;
    const issuing = (blocks: object) => ({ revision, blocks });
    expect(await ask("POST", path, 409, issuing({ seen: 1 }))).toMatchObject({
      code: "block-changed-meanwhile",
    });
    await ask("GET", `/api/drafts/${checklist}`, 200);
    expect(await ask("POST", path, 200, issuing({ seen: 2 }))).toMatchObject({ issue: 1 });
  });

  it("is told of a block that is not there, and of what the block brings that cannot be", async () => {
    const unknown = await draftOf(["keptt"]);
    expect(unknown.problems).toMatchObject([
      { pointer: "/include/0/block", code: "block-unknown", params: { nearest: "kept" } },
    ]);
    await issue(unknown, 422);
    const limits = [{ max: "nowhere.at_all", severity: "fail" }];
    const point = { $ref: "#/$defs/reading", title: "Gap", quantity: { unit: "mm" }, limits };
    await keep({ ...blockOf("faulty"), points: { faulty_gap: point } } as { name: string });
    const faulty = await draftOf(["faulty"]);
    expect(faulty.problems.map(({ pointer }) => pointer).join()).toContain(
      "/properties/faulty_gap",
    );
    expect((await issue(faulty, 422)).problems.length).toBeGreaterThan(0);
  });

  it("and the block itself are left alone when the register is derived again from the log", async () => {
    await keep(blockOf("stays"));
    const draft = await draftOf(["stays"]);
    const before = await ask("GET", "/api/blocks", 200);
    const { store } = server;
    await rebuild(createContext({ store, clock: () => server.now, newId: () => "" }));
    expect(await ask("GET", "/api/blocks", 200)).toEqual(before);
    expect((await ask<DraftRow>("GET", `/api/drafts/${draft.checklist}`, 200)).problems).toEqual(
      [],
    );
  });
});
