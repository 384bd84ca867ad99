import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { PageCase, PageRun } from "./conformance-page.ts";
import { launchBrowser } from "./launch.ts";

const ENTRY = fileURLToPath(new URL("./conformance-page.ts", import.meta.url));
const POLICY = "default-src 'none'; script-src 'self'";
const HTML = '<!doctype html><title>Cases</title><script type="module" src="/page.js"></script>';

/** The script of the page, built as the apps are and written nowhere. */
async function bundle(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      target: "es2022",
      lib: { entry: ENTRY, formats: ["es"], fileName: "page" },
    },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (!output || !("output" in output)) throw new Error("nothing was built");
  if (output.output.length !== 1) throw new Error("more than one file was built");
  return output.output[0].code;
}

const serve = (script: string): Promise<Server> =>
  new Promise((resolve) => {
    const server = createServer(({ url }, response) => {
      const isScript = url === "/page.js";
      const type = isScript ? "text/javascript" : "text/html";
      response.setHeader("content-type", `${type}; charset=utf-8`);
      response.setHeader("content-security-policy", POLICY);
      response.end(isScript ? script : HTML);
    }).listen(0, "127.0.0.1", () => resolve(server));
  });

let browser: Browser;
let server: Server;
let found: PageRun;

beforeAll(async () => {
  server = await serve(await bundle());
  browser = await launchBrowser();
  const page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  await page.waitForFunction(() => window.conformance !== undefined);
  // As JSON: a member named `__proto__` would not come across any other way.
  found = JSON.parse(await page.evaluate(() => JSON.stringify(window.conformance)));
});

afterAll(async () => {
  await browser?.close();
  server?.close();
});

const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

const differs = ({ outcome }: PageCase): boolean =>
  typeof outcome === "string" ||
  JSON.stringify(asJson(outcome.found)) !== JSON.stringify(asJson(outcome.expected));

describe("the cases of the language in a browser", () => {
  it("run where no text may become code", () => {
    expect(found.compiles).toBe(false);
  });

  it("come out as they do in Node; those of the meta-schema, which no browser compiles, run there alone", () => {
    expect(found.cases.length).toBeGreaterThanOrEqual(280);
    expect(found.cases.filter(differs)).toEqual([]);
  });
});
