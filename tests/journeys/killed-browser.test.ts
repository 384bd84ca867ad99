import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type SpawnedBrowser, spawnBrowser } from "../browser/spawn.ts";
import { type Book, openBook } from "./book.ts";
import { withQueue } from "./queue.ts";
import { chooseSite, signIn } from "./visitor.ts";

const PASSWORD = "harbour-journey";
const ROUNDS = 10;
let book: Book;
let profile: string;
let running: SpawnedBrowser | undefined;

beforeAll(async () => {
  profile = await mkdtemp(join(tmpdir(), "roundbook-profile-"));
  book = await openBook();
});
afterAll(async () => {
  await running?.kill();
  await book?.close();
  await rm(profile, { recursive: true, force: true });
});

async function openPage(): Promise<Page> {
  running = await spawnBrowser(profile);
  const [context] = running.browser.contexts();
  if (!context) throw new Error("the browser has no profile");
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  return page;
}

const killed = async () => {
  await running?.kill();
  running = undefined;
};

test("a browser that is killed while it saves has kept every save that it acknowledged, whole", async () => {
  let page = await openPage();
  await page.goto(book.begin);
  await page.getByRole("button", { name: "Open the demo" }).click();
  await page.getByLabel("Your name").fill("Ona Tarrel");
  await page.getByLabel("Sign-in name").fill("ona");
  await page.getByLabel("Password").fill(PASSWORD);
  await page.getByRole("button", { name: "Open the demo" }).click();
  await page.getByText("Choose the site you walk.").waitFor();
  await page.context().clearCookies();
  await signIn(page, book.origin, "dag", PASSWORD);
  await chooseSite(page, "Boat Workshop");
  const lost: string[] = [];
  let acknowledged = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const told = { saves: 0, finished: 0 };
    await page.exposeFunction(`told${round}`, (line: string) => {
      const [what, count] = line.split(" ");
      if (what === "saved") told.saves = Number(count);
      else told.finished = Number(count);
    });
    await withQueue(page);
    page
      .evaluate((at) => {
        const tell = (window as never)[`told${at}`] as (line: string) => Promise<void>;
        return window.saveForEver(`round-${at}`, tell);
      }, round)
      .catch(() => undefined);
    await expect.poll(() => told.saves, { timeout: 20_000 }).toBeGreaterThan(20);
    // A different moment of a save each time, without a random number.
    await new Promise((resolve) => setTimeout(resolve, 37 * (round % 7)));
    await killed();
    page = await openPage();
    await page.goto(`${book.origin}/device`);
    await withQueue(page);
    const kept = await page.evaluate((at) => window.savedOf(`round-${at}`), round);
    acknowledged += told.saves;
    if (kept.saves < told.saves || kept.finished < told.finished || kept.broken > 0)
      lost.push(`round ${round}: told ${JSON.stringify(told)}, kept ${JSON.stringify(kept)}`);
  }
  expect(lost).toEqual([]);
  expect(acknowledged).toBeGreaterThan(ROUNDS * 20);
});
