import { readdir } from "node:fs/promises";
import { join } from "node:path";
import type { ImportReport } from "@roundbook/schemas";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Upload } from "../usecases/uploads.ts";
import { beginDemo, signIn, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let manager: string;
beforeAll(async () => {
  server = await startServer();
  await beginDemo(server);
  manager = await signIn(server, "morwen");
}, 30_000);
afterAll(() => server.close());

const FILE =
  "No;Type;What;Where\r\n9001;ladder;Steps, old;Harbour Office\r\n9002;ladder;Steps;Harbour Office\r\n";
const MAPPING = {
  kind: "register",
  source: "Old sheet",
  asset: { number: "No", assetType: { column: "Type" }, description: "What", place: ["Where"] },
};

const upload = (body: string, type = "text/csv") =>
  server.app.request("/api/imports", {
    method: "POST",
    headers: { cookie: manager, "content-type": type },
    body,
  });
const run = async (id: string, verb: "trial" | "run") => {
  const reply = await server.call("POST", `/api/imports/${id}/${verb}`, {
    as: manager,
    body: MAPPING,
  });
  const text = await reply.text();
  expect(reply.status, text).toBe(200);
  return JSON.parse(text) as ImportReport;
};

describe("importing through the app", () => {
  it("shows the file's beginning, tries it without writing, then imports it once", async () => {
    const reply = await upload(`\uFEFF${FILE}`);
    expect(reply.status).toBe(201);
    const { id, columns, delimiter, sample } = (await reply.json()) as Upload;
    expect(columns).toEqual(["No", "Type", "What", "Where"]);
    expect(delimiter).toBe(";");
    expect(sample[0]).toEqual(["9001", "ladder", "Steps, old", "Harbour Office"]);
    expect(await run(id, "trial")).toMatchObject({
      trial: true,
      rows: 2,
      newAssets: 2,
      badRows: 0,
    });
    expect((await server.call("GET", "/api/assets/number:9001", { as: manager })).status).toBe(404);
    expect(await run(id, "run")).toMatchObject({ trial: false, newAssets: 2, badRows: 0 });
    expect((await server.call("GET", "/api/assets/number:9001", { as: manager })).status).toBe(200);
    expect(await run(id, "run")).toMatchObject({ newAssets: 0, newEntries: 0, already: 2 });
  });

  it("a file that is none is refused and not kept", async () => {
    const before = await readdir(join(server.folder, "uploads"));
    const empty = await upload("");
    expect(empty.status).toBe(422);
    expect(await empty.json()).toMatchObject({ problems: [{ code: "csv-empty" }] });
    expect((await upload(FILE, "application/json")).status).toBe(415);
    expect(await readdir(join(server.folder, "uploads"))).toEqual(before);
  });

  it("an import nobody sent is not found, whatever its name", async () => {
    for (const id of ["0", "..%2f..%2froundbook"]) {
      const path = `/api/imports/${id}/run`;
      const reply = await server.call("POST", path, { as: manager, body: MAPPING });
      expect(reply.status).toBe(404);
    }
  });
});
