import { Hono } from "hono";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { securityHeaders } from "./headers.ts";
import { replyProblem } from "./reply-problem.ts";
import { beginOwn, PASSWORD, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
beforeAll(async () => {
  server = await startServer();
  owner = await beginOwn(server);
});
afterAll(() => server.close());

const codeOf = async (reply: Response) => ((await reply.json()) as { code: string }).code;

describe("every reply is protected", () => {
  it("runs no script but our own, whatever was answered", async () => {
    for (const path of ["/", "/api/session", "/api/none", "/api/people", "/missing.js"]) {
      const { headers } = await server.call("GET", path);
      const policy = headers.get("content-security-policy") ?? "";
      expect(policy, path).toContain("default-src 'none'");
      expect(policy, path).toContain("script-src 'self';");
      expect(policy, path).not.toContain("unsafe");
      expect(headers.get("x-content-type-options"), path).toBe("nosniff");
      expect(headers.get("referrer-policy"), path).toBe("no-referrer");
      expect(headers.get("cross-origin-opener-policy"), path).toBe("same-origin");
    }
  });

  it("promises https only where it was spoken", async () => {
    const plain = await server.app.request("http://127.0.0.1/api/session");
    expect(plain.headers.get("strict-transport-security")).toBeNull();
    const tls = await server.app.request("https://book.example/api/session");
    expect(tls.headers.get("strict-transport-security")).toMatch(/^max-age=\d+/);
  });

  it("answers of the API are not kept by anyone between", async () => {
    const reply = await server.call("GET", "/api/people", { as: owner });
    expect(reply.headers.get("cache-control")).toBe("no-store");
  });
});

describe("another site cannot act with a visitor's cookie", () => {
  const post = (headers: Record<string, string>) =>
    server.app.request("http://127.0.0.1:8420/api/session", {
      method: "POST",
      headers: { host: "127.0.0.1:8420", "content-type": "application/json", ...headers },
      body: JSON.stringify({ signIn: "owner", password: PASSWORD }),
    });

  it("is refused by the browser's own word or by its origin", async () => {
    const foreign: Record<string, string>[] = [
      { "sec-fetch-site": "cross-site" },
      { "sec-fetch-site": "same-site" },
      { origin: "http://evil.example" },
      { origin: "http://127.0.0.1:9999" },
      { origin: "null" },
    ];
    for (const headers of foreign) {
      const reply = await post(headers);
      expect(reply.status, JSON.stringify(headers)).toBe(403);
      expect(await codeOf(reply)).toBe("other-origin");
      expect(reply.headers.get("set-cookie")).toBeNull();
    }
  });

  it("our own pages and programs without a browser pass", async () => {
    const own: Record<string, string>[] = [
      { "sec-fetch-site": "same-origin", origin: "http://127.0.0.1:8420" },
      { origin: "http://127.0.0.1:8420" },
      {},
    ];
    for (const headers of own)
      expect((await post(headers)).status, JSON.stringify(headers)).toBe(204);
  });
});

describe("an error of our own", () => {
  it("tells the asker nothing, is reported whole, and the next request is answered", async () => {
    const reported: unknown[] = [];
    const app = new Hono();
    app.onError((error, c) => replyProblem(error, c, (one) => reported.push(one)));
    app.use(securityHeaders);
    app.get("/broken", () => {
      throw new Error("the secret is 42");
    });
    app.get("/sound", (c) => c.text("here"));
    const reply = await app.request("/broken");
    expect(reply.status).toBe(500);
    expect(reply.headers.get("content-type")).toBe("application/problem+json");
    const text = await reply.text();
    expect(text).not.toContain("42");
    expect(JSON.parse(text)).toMatchObject({ status: 500, code: "internal" });
    expect(String(reported[0])).toContain("the secret is 42");
    expect(await (await app.request("/sound")).text()).toBe("here");
  });

  it("in a route leaves the whole server standing", async () => {
    const { select } = server.store.db;
    Object.assign(server.store.db, {
      select: () => {
        throw new Error("the disk is gone");
      },
    });
    const reply = await server.call("GET", "/api/session");
    Object.assign(server.store.db, { select });
    expect(reply.status).toBe(500);
    expect(await reply.text()).not.toContain("disk");
    expect(server.reported).toHaveLength(1);
    expect((await server.call("GET", "/api/session")).status).toBe(200);
  });
});
