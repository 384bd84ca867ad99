import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { findBrowser } from "./find.mjs";
import { ARGUMENTS } from "./launch.ts";

export interface SpawnedBrowser {
  readonly browser: Browser;
  /** Ends it as a battery that runs out would. */
  kill(): Promise<void>;
}

/** A Chromium with a profile that outlives it, in a process that a test may kill. */
export async function spawnBrowser(profile: string): Promise<SpawnedBrowser> {
  const cache = fileURLToPath(new URL("../../.cache/browser", import.meta.url));
  const path = await findBrowser({ cache });
  if (!path) throw new Error("no Chromium found: set CHROMIUM to the path of one");
  const child = spawn(
    path,
    [...ARGUMENTS, "--headless", "--remote-debugging-port=0", `--user-data-dir=${profile}`],
    { stdio: ["ignore", "ignore", "pipe"], detached: true },
  );
  const browser = await chromium.connectOverCDP(await address(child));
  return {
    browser,
    kill: async () => {
      const ended = new Promise((resolve) => child.once("exit", resolve));
      // With the processes of its pages: the whole group that it leads.
      process.kill(-(child.pid as number), "SIGKILL");
      await ended;
      await browser.close().catch(() => undefined);
    },
  };
}

const address = (child: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = "";
    child.stderr?.on("data", (chunk) => {
      said += chunk;
      const found = /DevTools listening on (ws:\S+)/.exec(said);
      if (found?.[1]) resolve(found[1]);
    });
    child.once("exit", (code) => reject(new Error(`the browser ended with ${code}: ${said}`)));
  });
