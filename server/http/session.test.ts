import { createHash } from "node:crypto";
import { verify } from "@node-rs/argon2";
import type { SessionReply } from "@roundbook/schemas";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { accounts, sessions } from "../store/schema/estate.ts";
import {
  addRole,
  beginOwn,
  cookieOf,
  PASSWORD,
  signIn,
  startServer,
  type TestServer,
} from "./testing/server.ts";

vi.mock("@node-rs/argon2", { spy: true });

const DAY = 86_400_000;
let server: TestServer;
beforeEach(async () => {
  server = await startServer();
});
afterEach(() => server.close());

const session = async (as?: string) =>
  (await (await server.call("GET", "/api/session", { as })).json()) as SessionReply;
const trySignIn = (name: string, password: string) =>
  server.call("POST", "/api/session", { body: { signIn: name, password } });
const setup = (token: string) => ({
  token,
  mode: "own",
  estate: "Test Estate",
  zone: "Europe/London",
  name: "Ona Owner",
  signIn: "owner",
  password: PASSWORD,
});

describe("beginning an estate", () => {
  it("needs the one-time token and works once", async () => {
    expect(await session()).toMatchObject({ empty: true, estate: null, person: null });
    const wrong = await server.call("POST", "/api/setup", { body: setup("x".repeat(32)) });
    expect(wrong.status).toBe(403);
    const first = await server.call("POST", "/api/setup", { body: setup(server.token) });
    expect(first.status).toBe(204);
    expect(await session(cookieOf(first))).toMatchObject({
      empty: false,
      estate: { name: "Test Estate" },
      person: { name: "Ona Owner", role: "owner" },
      now: "2026-10-13T09:40:00.000Z",
    });
    const again = await server.call("POST", "/api/setup", { body: setup(server.token) });
    expect(again.status).toBe(403);
  });

  it("of two at once only one is the owner", async () => {
    const body = setup(server.token);
    const replies = await Promise.all([
      server.call("POST", "/api/setup", { body }),
      server.call("POST", "/api/setup", { body: { ...body, signIn: "other" } }),
    ]);
    expect(replies.map(({ status }) => status).toSorted()).toEqual([204, 403]);
    expect(await server.store.db.select().from(accounts)).toHaveLength(1);
  });

  it("a zone nobody keeps is named, and the token still works afterwards", async () => {
    const bad = { ...setup(server.token), zone: "Vennasay/Harbour" };
    const reply = await server.call("POST", "/api/setup", { body: bad });
    expect(reply.status).toBe(422);
    expect(await reply.json()).toMatchObject({
      problems: [{ pointer: "/zone", code: "unknown-zone" }],
    });
    expect((await session()).empty).toBe(true);
    const good = await server.call("POST", "/api/setup", { body: setup(server.token) });
    expect(good.status).toBe(204);
  });
});

describe("a session", () => {
  it("lives in a cookie no script reads, and only its hash is stored", async () => {
    const reply = await server.call("POST", "/api/setup", { body: setup(server.token) });
    const header = reply.headers.get("set-cookie") ?? "";
    expect(header).toContain("HttpOnly");
    expect(header).toContain("SameSite=Strict");
    expect(header).toContain("Path=/");
    expect(header).not.toContain("Secure");
    const value = cookieOf(reply).replace("rb_session=", "");
    expect(Buffer.from(value, "base64url")).toHaveLength(32);
    const [row] = await server.store.db.select().from(sessions);
    expect(row?.tokenHash).toBe(createHash("sha256").update(value).digest("hex"));
  });

  it("ends thirty days after its last use, not after its first", async () => {
    const as = await beginOwn(server);
    server.now += 29 * DAY;
    expect((await session(as)).person).not.toBeNull();
    server.now += 29 * DAY;
    expect((await session(as)).person).not.toBeNull();
    server.now += 31 * DAY;
    expect((await session(as)).person).toBeNull();
  });

  it("is over when its person signs out", async () => {
    const as = await beginOwn(server);
    const other = await signIn(server, "owner");
    expect((await server.call("DELETE", "/api/session", { as })).status).toBe(204);
    expect((await session(as)).person).toBeNull();
    expect((await session(other)).person).not.toBeNull();
  });
});

describe("signing in", () => {
  it("tells neither which half was wrong nor, by its work, which names exist", async () => {
    await beginOwn(server);
    const tried = async (name: string) => {
      vi.mocked(verify).mockClear();
      const reply = await trySignIn(name, "not the password");
      const hashes = vi
        .mocked(verify)
        .mock.calls.map(([hash]) => String(hash).split("$").slice(0, 4));
      return { text: await reply.text(), status: reply.status, hashes };
    };
    const unknown = await tried("nobody");
    expect(unknown.status).toBe(401);
    // One argon2 hash of the same cost: without it an unknown name answers in a tenth of the time.
    expect(unknown.hashes).toHaveLength(1);
    expect(await tried("owner")).toEqual(unknown);
  });

  it("is refused for a while after ten wrong tries at one name, and other names go on", async () => {
    const owner = await beginOwn(server);
    await addRole(server, owner, "manager");
    for (let n = 0; n < 10; n += 1)
      expect((await trySignIn("owner", "wrong one")).status).toBe(401);
    const refused = await trySignIn("owner", PASSWORD);
    expect(refused.status).toBe(429);
    expect(Number(refused.headers.get("retry-after"))).toBeGreaterThan(0);
    expect((await trySignIn("the-manager", PASSWORD)).status).toBe(204);
    server.now += 90_000;
    expect((await trySignIn("owner", PASSWORD)).status).toBe(204);
  });

  it("only an owner makes another owner, and a sign-in is taken once", async () => {
    const owner = await beginOwn(server);
    const manager = await addRole(server, owner, "manager");
    const body = { name: "Second", role: "owner", signIn: "second", password: PASSWORD };
    expect((await server.call("POST", "/api/people", { as: manager, body })).status).toBe(403);
    expect((await server.call("POST", "/api/people", { as: owner, body })).status).toBe(201);
    const twice = await server.call("POST", "/api/people", { as: owner, body });
    expect(twice.status).toBe(409);
    expect(await twice.json()).toMatchObject({
      code: "sign-in-taken",
      problems: [{ pointer: "/signIn" }],
    });
  });
});
