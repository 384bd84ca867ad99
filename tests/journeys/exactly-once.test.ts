import type { HistoryEntry, PersonRow } from "@roundbook/schemas";
import type { Browser, Page, Route } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser } from "../browser/launch.ts";
import type { Book } from "./book.ts";
import { openDemoBook, PASSWORD, walkerOf } from "./demo-book.ts";
import { drained, queue, queueState } from "./queue.ts";
import type { Queued } from "./queue-page.ts";
import { signIn, type Visitor, visit } from "./visitor.ts";

const _SITE = "Boat Workshop";
let browser: Browser;
let book: Book;
let owner: Visitor;

beforeAll(async () => {
  browser = await launchBrowser();
  book = await openDemoBook(browser);
  owner = await visit(browser);
  await signIn(owner.page, book.origin, "ona", PASSWORD);
  await owner.page.getByText("Choose the site you walk.").waitFor();
});
afterAll(async () => {
  await owner?.context.close();
  await browser?.close();
  await book?.close();
});

/** A caretaker with the site on their phone and no network. */
async function offline(name = "dag"): Promise<Visitor> {
  const visitor = await walkerOf(browser, book, name);
  await visitor.context.setOffline(true);
  return visitor;
}

const sealed = async (): Promise<HistoryEntry[]> => {
  const text = await owner.page.evaluate(async () => (await fetch("/api/export")).text());
  return text
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
};

interface Count {
  readonly acknowledged: number;
  readonly kept: number;
  readonly doubled: number;
  readonly altered: number;
  readonly photos: number;
}

/** What the logbook holds of what a device queued. */
async function counted(page: Page, queued: Queued): Promise<Count> {
  const rows = await sealed();
  const { sent } = await queueState(page);
  const times = new Map<string, number>();
  for (const { entry } of rows) times.set(entry.id, (times.get(entry.id) ?? 0) + 1);
  const ids = Object.keys(queued.entries);
  const hashes = new Map(rows.map(({ entry, leaf }) => [entry.id, leaf.hash]));
  const photos = await owner.page.evaluate(async (hashesOfPhotos) => {
    let found = 0;
    for (const sha256 of hashesOfPhotos)
      if ((await fetch(`/api/evidence/${sha256}`, { method: "GET" })).ok) found += 1;
    return found;
  }, queued.photos);
  return {
    acknowledged: ids.filter((id) => sent.includes(id)).length,
    kept: ids.filter((id) => times.has(id)).length,
    doubled: ids.filter((id) => (times.get(id) ?? 0) > 1).length,
    altered: ids.filter((id) => hashes.has(id) && hashes.get(id) !== queued.entries[id]).length,
    photos,
  };
}

const all = (count: number, photos = 0): Count => ({
  acknowledged: count,
  kept: count,
  doubled: 0,
  altered: 0,
  photos,
});

/** Lets the server answer and keeps the answer from the page. */
const loseAnswer = async (route: Route) => {
  await route.fetch().catch(() => undefined);
  await route.abort("connectionreset");
};

describe("what is written on a device is sealed exactly once", () => {
  test("answers of the server that are lost on the way", async () => {
    const { page, context, close } = await offline();
    const queued = await queue(page, 120, true);
    let lost = 0;
    await context.route("**/api/entries", async (route) => {
      if (lost < 4) {
        lost += 1;
        await loseAnswer(route);
      } else await route.continue();
    });
    await context.setOffline(false);
    for (let turn = 0; turn < 6; turn += 1) {
      await page.waitForTimeout(1500);
      await page.evaluate(() => window.dispatchEvent(new Event("online")));
    }
    await drained(page);
    expect(lost).toBe(4);
    expect(await counted(page, queued)).toEqual(all(120, 120));
    await close();
  });

  test("two tabs that send at the same time", async () => {
    const { page, context, close } = await offline();
    const queued = await queue(page, 100, false);
    const other = await context.newPage();
    await other.goto(`${book.origin}/device`).catch(() => undefined);
    await context.setOffline(false);
    await Promise.all(
      [page, other].map((tab) => tab.evaluate(() => window.dispatchEvent(new Event("online")))),
    );
    await drained(page);
    expect(await counted(page, queued)).toEqual(all(100));
    await close();
  });

  test("a session that ends in the middle, and another person who signs in on the device", async () => {
    const { page, context, close } = await offline("dag");
    const queued = await queue(page, 150, false);
    let posts = 0;
    await context.route("**/api/entries", async (route) => {
      posts += 1;
      if (posts === 2) await context.clearCookies();
      await route.continue();
    });
    await context.setOffline(false);
    await page
      .getByText(/sign in/i)
      .first()
      .waitFor();
    const before = await queueState(page);
    expect(before.waiting.length).toBeGreaterThan(0);
    await context.unroute("**/api/entries");
    await page.goto(`${book.origin}/sign-in`);
    await page.getByLabel("Sign-in name").fill("isel");
    await page.getByLabel("Password").fill(PASSWORD);
    await page.getByRole("button", { name: "Sign in" }).click();
    await page.getByRole("heading", { level: 1 }).waitFor();
    await drained(page);
    expect(await counted(page, queued)).toEqual(all(150));
    const rows = (await sealed()).filter(({ entry }) => entry.id in queued.entries);
    expect(rows.every(({ entry }) => entry.author === queued.author)).toBe(true);
    const people = await owner.page.evaluate(async () => (await fetch("/api/people")).json());
    const names = new Map(people.rows.map((one: PersonRow) => [one.id, one.name]));
    expect(names.get(queued.author)).toBe("Dag Ruskeen");
    await close();
  });

  test("a clock that is two days ahead: the day is that of the site, both clocks are kept and the difference is flagged", async () => {
    const { page, context, close } = await offline();
    await context.setOffline(false);
    await page.clock.setSystemTime(Date.now() + 2 * 86_400_000);
    await page.reload();
    await page.getByRole("heading", { level: 1 }).waitFor();
    await page.evaluate(() => window.dispatchEvent(new Event("online")));
    await page.waitForTimeout(2000);
    await context.setOffline(true);
    const queued = await queue(page, 20, false);
    await context.setOffline(false);
    await drained(page);
    expect(await counted(page, queued)).toEqual(all(20));
    const rows = (await sealed()).filter(({ entry }) => entry.id in queued.entries);
    const today = new Intl.DateTimeFormat("en-CA", { timeZone: "Europe/London" }).format();
    expect(new Set(rows.map(({ entry }) => entry.civilDate))).toEqual(new Set([today]));
    expect(rows.every(({ leaf }) => leaf.flags.includes("clock-differs"))).toBe(true);
    expect(
      rows.every(
        ({ entry, leaf }) =>
          Date.parse(entry.happenedAt ?? "") - Date.parse(leaf.receivedAt) > 86_400_000,
      ),
    ).toBe(true);
    await close();
  });

  test("five hundred entries with photos, and a server that is killed in the middle", async () => {
    const { page, context, close } = await offline();
    const queued = await queue(page, 500, true);
    let posts = 0;
    await context.route("**/api/entries", async (route) => {
      posts += 1;
      if (posts === 3) {
        const answer = route.fetch().catch(() => undefined);
        await book.crash();
        await answer;
        await book.restart();
        await route.abort("connectionreset");
      } else await route.continue();
    });
    await context.setOffline(false);
    for (let turn = 0; turn < 8; turn += 1) {
      await page.waitForTimeout(1500);
      await page.evaluate(() => window.dispatchEvent(new Event("online")));
    }
    await drained(page, 180_000);
    expect(await counted(page, queued)).toEqual(all(500, 500));
    await close();
  }, 300_000);
});
