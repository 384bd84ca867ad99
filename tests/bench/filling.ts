import type { Browser } from "playwright-core";
import { launchBrowser } from "../browser/launch.ts";
import { quantile, taskTime, watchKeys } from "./browser-time.ts";
import { PAGES, type PageName, type ServedPages, servePages } from "./filling/pages.ts";
import type { Row } from "./row.ts";

const SIZES = [50, 200, 500];
const ROUNDS = 5;
const THROTTLED = { points: 200, rate: 4, rounds: 3 };
const KEYS = ["4", "5", ".", "5", "Backspace", "Backspace", "Backspace", "Backspace"];
const TURNS = 3;
const KEY_PAUSE = 30;
const SETTLE = 300;
const PHONE = { width: 390, height: 844 };

/** Milliseconds: of the main thread for loading, of the main thread for each key, and to its frame. */
interface Taken {
  readonly load: number;
  readonly key: number;
  readonly frames: readonly number[];
}

/** Loads a page in a browser profile of its own, then writes a reading and takes it out, three times. */
async function fill(browser: Browser, pages: ServedPages, address: string, rate = 1) {
  const context = await browser.newContext({ viewport: PHONE });
  try {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await page.goto(pages.origin);
    await session.send("Performance.enable");
    await session.send("Emulation.setCPUThrottlingRate", { rate });
    const before = await taskTime(session);
    await page.goto(address);
    const box = page.locator("input").first();
    await box.waitFor();
    await page.waitForTimeout(SETTLE * rate);
    const load = (await taskTime(session)) - before;
    await box.focus();
    await watchKeys(page);
    const press = async () => {
      for (const key of KEYS) {
        await page.keyboard.press(key);
        await page.waitForTimeout(KEY_PAUSE * rate);
      }
    };
    await press();
    await page.evaluate(() => {
      window.keyFrames = [];
    });
    const start = await taskTime(session);
    for (let turn = 0; turn < TURNS; turn += 1) await press();
    const key = ((await taskTime(session)) - start) / (TURNS * KEYS.length);
    const frames = await page.evaluate(() => window.keyFrames);
    if (frames.length !== TURNS * KEYS.length) throw new Error(`${address} missed a key`);
    return { load, key, frames } satisfies Taken;
  } finally {
    await context.close();
  }
}

type Found = Record<PageName, Taken[]>;

/** Rounds alternate, so that noise meets all pages alike. */
async function rounds(
  browser: Browser,
  pages: ServedPages,
  { points, rounds, rate }: { points: number; rounds: number; rate: number },
): Promise<Found> {
  const found: Found = { own: [], "hook-form": [], "schema-form": [], plain: [] };
  for (let round = 0; round < rounds; round += 1)
    for (const name of PAGES)
      found[name].push(await fill(browser, pages, pages.address(name, points), rate));
  return found;
}

const NAMES: Record<PageName, string> = {
  own: "this form",
  "hook-form": "bare react-hook-form",
  "schema-form": "@rjsf/core 6",
  plain: "plain HTML",
};

const median = (found: Found, name: PageName, what: "load" | "key"): number =>
  quantile(
    found[name].map((one) => one[what]),
    0.5,
  );

const against = (
  found: Found,
  what: "load" | "key",
  title: string,
  other: PageName,
  most?: number,
): Row => {
  const [own, theirs] = [median(found, "own", what), median(found, other, what)];
  return {
    what: title,
    against: NAMES[other],
    ratio: own / theirs,
    figure: `${own.toFixed(1)} ms CPU against ${theirs.toFixed(1)} ms`,
    ...(most !== undefined && { target: `≤ ${most.toFixed(1)} ×`, met: own / theirs <= most }),
  };
};

const frameRow = (found: Found, title: string, most?: number): Row => {
  const times = (name: PageName) => found[name].flatMap(({ frames }) => frames);
  const p95 = quantile(times("own"), 0.95);
  return {
    what: title,
    against: "",
    ratio: null,
    figure: PAGES.map(
      (name) =>
        `${NAMES[name]} ${quantile(times(name), 0.5).toFixed(1)} / ${quantile(times(name), 0.95).toFixed(1)} ms`,
    ).join(", "),
    ...(most !== undefined && { target: `p95 ≤ ${most} ms`, met: p95 <= most }),
  };
};

/** The form beside others that fill the same points, each in a page of its own in one browser. */
export const benchFilling = async (root: string): Promise<Row[]> => {
  const pages = await servePages(root, SIZES);
  const browser = await launchBrowser();
  try {
    const rows: Row[] = [];
    for (const points of SIZES) {
      const found = await rounds(browser, pages, { points, rounds: ROUNDS, rate: 1 });
      const most = points === 500 ? 0.6 : undefined;
      rows.push(
        against(found, "load", `form of ${points}: load`, "hook-form", 1),
        against(found, "load", `form of ${points}: load`, "schema-form", most),
        against(found, "key", `form of ${points}: key`, "plain", 1.3),
        against(found, "key", `form of ${points}: key`, "hook-form"),
        frameRow(found, `form of ${points}: key → frame p50 / p95`),
      );
    }
    const { points, rate } = THROTTLED;
    const slow = await rounds(browser, pages, THROTTLED);
    rows.push(frameRow(slow, `form of ${points}, CPU ÷ ${rate}: key → frame p50 / p95`, 50));
    return rows;
  } finally {
    await browser.close();
    pages.close();
  }
};
