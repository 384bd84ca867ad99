import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Browser, Page } from "playwright-core";
import { build } from "vite";
import { launchBrowser } from "./launch.ts";

/** No text may become code, as in the apps. */
const POLICY = "default-src 'none'; script-src 'self'";
const HTML = '<!doctype html><title>Test</title><script type="module" src="/page.js"></script>';

/** The script of a page, built as the apps are and written nowhere. */
async function bundle(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "error",
    build: { write: false, target: "es2022", lib: { entry, formats: ["es"], fileName: "page" } },
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

export interface PageUnderPolicy {
  readonly page: Page;
  close(): Promise<void>;
}

/** Builds the script at `entry` (an absolute path) and runs it in a page that forbids eval. */
export async function openUnderPolicy(entry: string): Promise<PageUnderPolicy> {
  const server = await serve(await bundle(entry));
  let browser: Browser | undefined;
  const close = async () => {
    await browser?.close();
    server.close();
  };
  try {
    browser = await launchBrowser();
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    return { page, close };
  } catch (error) {
    await close();
    throw error;
  }
}
