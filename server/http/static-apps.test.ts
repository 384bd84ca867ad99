import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { Hono } from "hono";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { replyProblem } from "./reply-problem.ts";
import { staticApps } from "./static-apps.ts";

const SCRIPT = "console.log(1);".repeat(200);
let folder: string;
let app: Hono;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "roundbook-static-"));
  for (const name of ["runner", "designer"]) {
    await mkdir(join(folder, name, "assets"), { recursive: true });
    await writeFile(join(folder, name, "index.html"), `<title>${name}</title>`);
    await writeFile(join(folder, name, "assets/app-Ab12_-xY.js"), SCRIPT);
    await writeFile(join(folder, name, "assets/app-Ab12_-xY.js.map"), "{}");
  }
  await writeFile(join(folder, "runner/sw.js"), "self");
  await writeFile(join(folder, "secret.txt"), "secret");
  app = new Hono();
  app.onError((error, c) => replyProblem(error, c, () => undefined));
  app.get("*", staticApps({ runner: join(folder, "runner"), designer: join(folder, "designer") }));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const get = (path: string, headers: Record<string, string> = {}) => app.request(path, { headers });

describe("the built apps", () => {
  it("stand at / and /designer/, and their pages have no file of their own", async () => {
    for (const path of ["/", "/round/4", "/assets/number:4012"])
      expect(await (await get(path)).text(), path).toContain("runner");
    for (const path of ["/designer/", "/designer/checklists/1"])
      expect(await (await get(path)).text(), path).toContain("designer");
    const bare = await get("/designer");
    expect([bare.status, bare.headers.get("location")]).toEqual([308, "/designer/"]);
  });

  it("a missing script is not found rather than a page", async () => {
    for (const path of [
      "/assets/old-12345678.js",
      "/designer/sw.js",
      "/assets/app-Ab12_-xY.js.map",
    ])
      expect((await get(path)).status, path).toBe(404);
  });

  it("keep for ever what is named by its content, and ask again for the rest", async () => {
    const kept = await get("/assets/app-Ab12_-xY.js");
    expect(kept.headers.get("cache-control")).toContain("immutable");
    expect(kept.headers.get("content-type")).toContain("text/javascript");
    for (const path of ["/", "/index.html", "/sw.js", "/round"])
      expect((await get(path)).headers.get("cache-control"), path).toBe("no-cache");
    const etag = kept.headers.get("etag") ?? "";
    expect((await get("/assets/app-Ab12_-xY.js", { "if-none-match": etag })).status).toBe(304);
  });

  it("are sent small to those who can read it", async () => {
    const bytes = async (encoding: string) => {
      const reply = await get("/assets/app-Ab12_-xY.js", { "accept-encoding": encoding });
      const body = Buffer.from(await reply.arrayBuffer());
      expect(reply.headers.get("content-length")).toBe(String(body.byteLength));
      return { encoding: reply.headers.get("content-encoding"), body };
    };
    const brotli = await bytes("gzip, deflate, br");
    expect(brotli.encoding).toBe("br");
    expect(brotliDecompressSync(brotli.body).toString()).toBe(SCRIPT);
    const zipped = await bytes("gzip");
    expect(zipped.encoding).toBe("gzip");
    expect(gunzipSync(zipped.body).toString()).toBe(SCRIPT);
    expect((await bytes("identity")).body.toString()).toBe(SCRIPT);
  });

  it("nothing outside their folders can be reached", async () => {
    for (const path of [
      "/../secret.txt",
      "/%2e%2e/secret.txt",
      "/..%2fsecret.txt",
      "/designer/..%5csecret.txt",
    ]) {
      const reply = await get(path);
      expect(await reply.text(), path).not.toContain("secret\n");
      expect(reply.status, path).toBe(404);
    }
  });
});
