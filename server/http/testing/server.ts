import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Role, SessionReply } from "@roundbook/schemas";
import type { Hono } from "hono";
import { createApp } from "../../app.ts";
import { createFolderBlobs } from "../../blobs/folder-blobs.ts";
import { createNewId } from "../../new-id.ts";
import { openStore, type Store } from "../../store/open-store.ts";
import { createSetupToken } from "../../usecases/setup-token.ts";

export const PASSWORD = "a long enough password";
export const NOW = Date.parse("2026-10-13T09:40:00.000Z");

export interface TestServer {
  readonly app: Hono;
  readonly store: Store;
  readonly folder: string;
  readonly token: string;
  /** Errors the server would have written to its log. */
  readonly reported: unknown[];
  now: number;
  /** A request as a browser of the same origin makes it; `as` is a cookie. */
  call(method: string, path: string, given?: { as?: string; body?: unknown }): Promise<Response>;
  close(): Promise<void>;
}

/** A whole server on a database of its own, without a socket. */
export async function startServer(): Promise<TestServer> {
  const folder = await mkdtemp(join(tmpdir(), "roundbook-http-"));
  const server = { now: NOW };
  const clock = () => server.now;
  const newId = createNewId(clock);
  const store = await openStore({ url: pathToFileURL(join(folder, "roundbook.db")).href });
  const setupToken = createSetupToken(true);
  const reported: unknown[] = [];
  const app = createApp({
    store,
    blobs: createFolderBlobs(join(folder, "evidence"), newId),
    clock,
    newId,
    setupToken,
    uploads: join(folder, "uploads"),
    apps: { runner: join(folder, "runner"), designer: join(folder, "designer") },
    report: (error) => reported.push(error),
  });
  return Object.assign(server, {
    app,
    store,
    folder,
    token: setupToken.text ?? "",
    reported,
    call: async (method: string, path: string, given: { as?: string; body?: unknown } = {}) => {
      const headers: Record<string, string> = { "sec-fetch-site": "same-origin" };
      if (given.as !== undefined) headers.cookie = given.as;
      if (given.body !== undefined) headers["content-type"] = "application/json";
      const body = given.body === undefined ? undefined : JSON.stringify(given.body);
      return app.request(path, { method, headers, body });
    },
    close: async () => {
      await store.close();
      await rm(folder, { recursive: true, force: true });
    },
  });
}

/** The cookie a reply sets, as the next request sends it. */
export const cookieOf = (reply: Response): string =>
  (reply.headers.get("set-cookie") ?? "").split(";")[0] ?? "";

const begin = async (server: TestServer, setup: object): Promise<string> => {
  const given = { token: server.token, signIn: "owner", password: PASSWORD, ...setup };
  const reply = await server.call("POST", "/api/setup", { body: given });
  if (reply.status !== 204) throw new Error(`setup: ${reply.status} ${await reply.text()}`);
  return cookieOf(reply);
};

/** Begins an estate of one's own; gives the owner's cookie. */
export const beginOwn = (server: TestServer): Promise<string> =>
  begin(server, { mode: "own", estate: "Test Estate", zone: "Europe/London", name: "Ona Owner" });

export const beginDemo = (server: TestServer): Promise<string> =>
  begin(server, { mode: "demo", name: "Ona Owner" });

export async function signIn(server: TestServer, name: string): Promise<string> {
  const reply = await server.call("POST", "/api/session", {
    body: { signIn: name, password: PASSWORD },
  });
  if (reply.status !== 204) throw new Error(`sign-in: ${reply.status} ${await reply.text()}`);
  return cookieOf(reply);
}

/** Adds a person of a role and signs them in. */
export async function addRole(server: TestServer, owner: string, role: Role): Promise<string> {
  const name = `the-${role}`;
  const body = { name, role, signIn: name, password: PASSWORD };
  const reply = await server.call("POST", "/api/people", { as: owner, body });
  if (reply.status !== 201) throw new Error(`add person: ${reply.status} ${await reply.text()}`);
  return signIn(server, name);
}

export const personOf = async (server: TestServer, as: string): Promise<string> => {
  const reply = await server.call("GET", "/api/session", { as });
  return ((await reply.json()) as SessionReply).person?.id ?? "";
};
