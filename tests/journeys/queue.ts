import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { build } from "vite";
import type { Queued } from "./queue-page.ts";

const ENTRY = fileURLToPath(new URL("./queue-page.ts", import.meta.url));
let script: Promise<string> | undefined;

/** The app's own device store as a script of the test: it signs and queues as the app does. */
async function bundled(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      target: "es2022",
      lib: { entry: ENTRY, formats: ["iife"], name: "queue", fileName: "queue" },
    },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (!output || !("output" in output)) throw new Error("nothing was built");
  return output.output[0].code;
}

/** Gives a page of the runner the means to queue and count. */
export async function withQueue(page: Page): Promise<void> {
  script ??= bundled();
  await page.evaluate(await script);
}

export async function queue(page: Page, count: number, photos: boolean): Promise<Queued> {
  await withQueue(page);
  return page.evaluate(([n, some]) => window.queueEntries(n, some), [count, photos] as const);
}

export async function queueState(page: Page) {
  await withQueue(page);
  return page.evaluate(() => window.queueState());
}

/** Resolves once nothing waits on the device and every photo is sent. */
export async function drained(page: Page, timeoutMs = 120_000): Promise<void> {
  await withQueue(page);
  const end = Date.now() + timeoutMs;
  for (;;) {
    const { waiting } = await page.evaluate(() => window.queueState());
    const photos = await page.evaluate(() => window.unsentPhotos());
    if (waiting.length === 0 && photos === 0) return;
    if (Date.now() > end) throw new Error(`${waiting.length} entries, ${photos} photos still wait`);
    await page.waitForTimeout(200);
  }
}
