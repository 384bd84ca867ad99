import { mkdtempSync, rmSync } from "node:fs";
import { get } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { launchBrowser } from "../browser/launch.ts";
import { quantile } from "./browser-time.ts";
import { fillFolder, SIGN_IN, SITE } from "./round/estate.ts";
import { startServer } from "./round/server.ts";
import type { Row } from "./row.ts";

const ASSETS = 2_000;
const SLOWER = 4;
const LONGEST_FRAME = 50;
const TARGET_START = 1_500;
const TARGET_KB = 400;
const STARTS = 5;
const WHEEL = 500;
const WHEEL_PAUSE = 30;
const PHONE = { width: 390, height: 844 };
const SCAN = "form.scan input";

declare global {
  interface Window {
    /** Milliseconds between frames, and how long each frame over 50 ms took. */
    drawn: { gaps: number[]; long: number[] };
    /** Milliseconds from the start of the navigation. */
    usable: { row: number; key: number };
  }
}

/** A page whose main thread is as slow as a cheap phone's. */
async function slowPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  return page;
}

async function bringSite(context: BrowserContext, origin: string): Promise<void> {
  const page = await context.newPage();
  await page.goto(`${origin}/`);
  await page.getByLabel("Sign-in name").fill(SIGN_IN.signIn);
  await page.getByLabel("Password").fill(SIGN_IN.password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.getByRole("link", { name: /^(Sites|Choose a site)$/ }).click();
  await page.getByRole("button", { name: new RegExp(SITE) }).click();
  await page.getByRole("heading", { level: 1, name: SITE }).waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.close();
}

/** What the bundle weighs on its way to a device. */
const weigh = (url: string, cookie: string, encoding: string): Promise<number> =>
  new Promise((resolve, reject) => {
    get(url, { headers: { cookie, "accept-encoding": encoding } }, (response) => {
      let bytes = 0;
      response.on("data", (chunk: Buffer) => {
        bytes += chunk.length;
      });
      response.on("end", () =>
        response.statusCode === 200
          ? resolve(bytes)
          : reject(new Error(`the bundle answers ${response.statusCode}`)),
      );
    }).on("error", reject);
  });

/** From a page that is not there to a first row that is seen and a scan box that took a key. */
async function coldStart(context: BrowserContext, origin: string): Promise<Page> {
  const page = await slowPage(context);
  await page.addInitScript((scan) => {
    window.usable = { row: Number.NaN, key: Number.NaN };
    const look = () => {
      const box = document.querySelector<HTMLInputElement>(scan);
      const first = document.querySelector(".row")?.getBoundingClientRect();
      if (box && first && first.bottom < box.getBoundingClientRect().top) {
        window.usable.row = performance.now();
        box.addEventListener("input", () =>
          requestAnimationFrame(() => {
            window.usable.key = performance.now();
          }),
        );
        box.focus();
      } else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  }, SCAN);
  await page.goto(`${origin}/`, { waitUntil: "commit" });
  await page.waitForFunction(() => window.usable?.row > 0);
  await page.keyboard.press("7");
  await page.waitForFunction(() => window.usable.key > 0);
  return page;
}

async function scroll(page: Page): Promise<Window["drawn"] & { readonly whole: number }> {
  await page.reload();
  await page.locator(".row").first().waitFor();
  const began = performance.now();
  await page.waitForFunction(() => !document.querySelector(".stretch-to-come"));
  const whole = performance.now() - began;
  await page.evaluate(() => {
    window.drawn = { gaps: [], long: [] };
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) window.drawn.long.push(duration);
    }).observe({ type: "long-animation-frame" });
    let last = performance.now();
    const next = (now: number) => {
      window.drawn.gaps.push(now - last);
      last = now;
      requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  await page.mouse.move(PHONE.width / 2, PHONE.height / 2);
  const atEnd = () =>
    page.evaluate(
      () => window.scrollY + window.innerHeight >= document.documentElement.scrollHeight - 2,
    );
  for (let turn = 0; turn < 1_000; turn += 1) {
    await page.mouse.wheel(0, WHEEL);
    await page.waitForTimeout(WHEEL_PAUSE);
    if (turn % 20 === 19 && (await atEnd())) break;
  }
  if (!(await atEnd())) throw new Error("the round has no end");
  return { whole, ...(await page.evaluate(() => window.drawn)) };
}

const row = (what: string, figure: string, target: string, met: boolean): Row => ({
  what: `round of ${ASSETS}: ${what}`,
  against: "",
  ratio: null,
  figure,
  target,
  met,
});

/** The caretaker's list at its longest, on the built server and app. */
export const benchRound = async (root: string): Promise<Row[]> => {
  const folder = mkdtempSync(join(tmpdir(), "roundbook-bench-round-"));
  const site = await fillFolder(folder, ASSETS);
  const server = await startServer(root, folder);
  const browser = await launchBrowser();
  try {
    const { origin } = server;
    const context = await browser.newContext({ viewport: PHONE, locale: "en-GB" });
    context.setDefaultTimeout(60_000);
    await bringSite(context, origin);
    const cookie = (await context.cookies())
      .map(({ name, value }) => `${name}=${value}`)
      .join("; ");
    const bundle = `${origin}/api/sites/${site}/bundle`;
    const [plain = 0, gzip = 0, brotli = 0] = await Promise.all(
      ["identity", "gzip", "br"].map((encoding) => weigh(bundle, cookie, encoding)),
    );
    await context.setOffline(true);
    const starts: Window["usable"][] = [];
    for (let turn = 0; turn <= STARTS; turn += 1) {
      const page = await coldStart(context, origin);
      // The first start fills the code cache, as on any device that has been used.
      if (turn > 0) starts.push(await page.evaluate(() => window.usable));
      await page.close();
    }
    const page = await slowPage(context);
    await page.goto(`${origin}/`);
    const { gaps, long, whole } = await scroll(page);
    const over = long.length;
    const seen = quantile(
      starts.map((one) => one.row),
      0.5,
    );
    const usable = quantile(
      starts.map((one) => one.key),
      0.5,
    );
    return [
      row(
        `scrolled to its end, CPU ÷ ${SLOWER}`,
        `all rows there ${(whole / 1000).toFixed(1)} s after the first, then ${gaps.length} frames, p95 ${quantile(gaps, 0.95).toFixed(1)} ms, longest gap ${Math.max(...gaps).toFixed(1)} ms, ${over} over ${LONGEST_FRAME} ms${over > 0 ? `, the longest ${Math.max(...long).toFixed(0)} ms` : ""}`,
        `none over ${LONGEST_FRAME} ms`,
        over === 0,
      ),
      row(
        `cold start without network, CPU ÷ ${SLOWER}`,
        `first row ${seen.toFixed(0)} ms, a key taken by the scan box ${usable.toFixed(0)} ms, median of ${STARTS}`,
        `≤ ${TARGET_START} ms`,
        usable <= TARGET_START,
      ),
      row(
        "brought to a device",
        `${(gzip / 1000).toFixed(0)} kB gzip, ${(brotli / 1000).toFixed(0)} kB brotli, ${(plain / 1000).toFixed(0)} kB plain`,
        `≤ ${TARGET_KB} kB gzip`,
        gzip / 1000 <= TARGET_KB,
      ),
    ];
  } finally {
    await browser.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
};
