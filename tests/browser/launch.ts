import { fileURLToPath } from "node:url";
import { type Browser, chromium } from "playwright-core";
import { findBrowser } from "./find.mjs";

export const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** A headless Chromium; throws when none can be found. `npm test` has found one already. */
export async function launchBrowser(): Promise<Browser> {
  const cache = fileURLToPath(new URL("../../.cache/browser", import.meta.url));
  const executablePath = await findBrowser({ cache });
  if (!executablePath) throw new Error("no Chromium found: set CHROMIUM to the path of one");
  return chromium.launch({ executablePath, headless: true, args: ARGUMENTS });
}
