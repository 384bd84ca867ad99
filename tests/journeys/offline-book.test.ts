import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser } from "../browser/launch.ts";
import type { Book } from "./book.ts";
import { openDemoBook, walkerOf } from "./demo-book.ts";
import { drained, queue, queueState, withQueue } from "./queue.ts";
import { words } from "./visitor.ts";

let browser: Browser;
let book: Book;

beforeAll(async () => {
  browser = await launchBrowser();
  book = await openDemoBook(browser);
});
afterAll(async () => {
  await browser?.close();
  await book?.close();
});

const caretaker = (name: string) => walkerOf(browser, book, name);

/** The history of the site is brought in the background. */
const historyKept = async (page: Page) => {
  await withQueue(page);
  await expect.poll(() => page.evaluate(() => window.pastKept()), { timeout: 30_000 }).toBe(true);
};

describe("without a network", () => {
  test("the round, the register with its search, an asset's dates and history and an old entry are all there, after a reload too", async () => {
    const { page, context, close } = await caretaker("dag");
    await historyKept(page);
    await context.setOffline(true);
    await page.goto(`${book.origin}/register`);
    await page
      .getByPlaceholder(/Scan|number|name/)
      .first()
      .fill("4033");
    await page.getByRole("link", { name: /4033/ }).first().click();
    await page.getByText("As this device keeps it").waitFor();
    const life = await words(page);
    expect(life).toContain("4033");
    expect(life).toMatch(/\d+ entries/);
    await page
      .getByRole("link", { name: /issue 1/ })
      .first()
      .click();
    await page.waitForURL(/\/entry\//);
    await page
      .getByText("Sealed")
      .or(page.getByText(/within the limits|Pass|Fail/))
      .first()
      .waitFor();
    await page.reload();
    await page
      .getByText(/Pass|Fail/)
      .first()
      .waitFor();
    await page.goto(`${book.origin}/`);
    await page.getByText("Machine shop").first().waitFor();
    await close();
  });

  test("unsent work leaves one device as a file and is sealed once from another, under the name of who wrote it", async () => {
    const from = await caretaker("dag");
    await from.context.setOffline(true);
    const queued = await queue(from.page, 12, true);
    await from.page.goto(`${book.origin}/device`);
    const saving = from.page.waitForEvent("download");
    await from.page.getByRole("button", { name: "Save unsent work to a file" }).click();
    const path = await (await saving).path();
    const file = JSON.parse(readFileSync(path, "utf8"));
    expect([file.outbox.length, file.photos.length]).toEqual([12, 12]);
    const to = await caretaker("isel");
    await to.page.goto(`${book.origin}/device`);
    const input = to.page.getByLabel("Take up unsent work from a file").last();
    await input.setInputFiles({
      name: "roundbook-unsent.json",
      mimeType: "application/json",
      buffer: readFileSync(path),
    });
    await to.page.getByText("Taken up: 12 entries, 0 unfinished checks, 12 photos.").waitFor();
    await drained(to.page);
    const { sent } = await queueState(to.page);
    expect(Object.keys(queued.entries).every((id) => sent.includes(id))).toBe(true);
    // The first device sends the same later: they are there already.
    await from.context.setOffline(false);
    await from.page.evaluate(() => window.dispatchEvent(new Event("online")));
    await drained(from.page);
    const first = Object.keys(queued.entries)[0] ?? "";
    const row = await to.page.evaluate(
      async (id) => (await fetch(`/api/entries/${id}`)).json(),
      first,
    );
    expect(row.authorName).toBe("Dag Ruskeen");
    await to.close();
    await from.close();
  });
});
