import { afterAll, beforeAll, expect, it } from "vitest";
import { beginOwn, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
beforeAll(async () => {
  server = await startServer();
  owner = await beginOwn(server);
});
afterAll(() => server.close());

const DEVICE = "01a134a2-1580-770d-bce4-bd97b6ba9d32";
const ask = (more: object = {}) =>
  server.call("POST", "/api/number-blocks", {
    as: owner,
    body: { device: DEVICE, site: DEVICE, prefix: "A-", near: 1, after: null, ...more },
  });

it("an enrolled device is leased numbers; asked for too often, it has to wait", async () => {
  expect((await ask()).status).toBe(409);
  const { publicKey } = await crypto.subtle.generateKey(
    { name: "ECDSA", namedCurve: "P-256" },
    true,
    ["sign", "verify"],
  );
  const raw = new Uint8Array(await crypto.subtle.exportKey("raw", publicKey));
  const key = Buffer.from(raw).toString("base64url");
  const body = { device: DEVICE, key, label: "Phone" };
  expect((await server.call("POST", "/api/devices", { as: owner, body })).status).toBe(204);
  const leased = await ask();
  expect(await leased.json()).toEqual({ id: 1, prefix: "A-", first: 1, last: 50 });
  let status = 200;
  for (let tries = 0; tries < 30 && status === 200; tries++) status = (await ask()).status;
  expect(status).toBe(429);
  expect((await ask({ prefix: "B-" })).status).toBe(200);
});

it("a prefix that ends in a digit, or a next number that is none, is no question", async () => {
  expect((await ask({ prefix: "A1" })).status).toBe(422);
  expect((await ask({ near: -1 })).status).toBe(422);
});
