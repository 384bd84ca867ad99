import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser } from "../browser/launch.ts";
import type { Book } from "./book.ts";
import { openDemoBook, walkerOf } from "./demo-book.ts";
import { drained, withQueue } from "./queue.ts";
import { overflow, words } from "./visitor.ts";

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

/** Opens the page and waits until numbers are kept for this device. */
const toAdd = async (page: Page) => {
  await page.goto(`${book.origin}/register/add`);
  await page.getByText("Next number here, kept for this device").waitFor();
};

/** Counts what a thumb does: every touch that reaches the page. */
const countTaps = (page: Page) =>
  page.evaluate(() => {
    Object.assign(window, { taps: 0 });
    addEventListener("pointerdown", () => Object.assign(window, { taps: taps() + 1 }), true);
    const taps = () => (window as unknown as { taps: number }).taps;
  });
const taps = (page: Page) =>
  page.evaluate(() => {
    const { taps } = window as unknown as { taps: number };
    Object.assign(window, { taps: 0 });
    return taps;
  });

const addFirst = async (page: Page, description: string) => {
  await page.getByLabel("Place").selectOption({ label: "Machine shop" });
  await page.getByLabel("Type").selectOption({ label: "Extension lead" });
  await page.getByRole("textbox", { name: "Description" }).fill(description);
  await page.getByRole("button", { name: "Add another" }).tap();
  await page.getByText(/^\S+ is added\.$/).waitFor();
};

/** Adds the next and says its number. */
const addAnother = async (page: Page): Promise<string> => {
  const number = (await page.locator(".title-number").innerText()).trim();
  await page.getByRole("button", { name: "Add another" }).tap();
  await page.getByText(`${number} is added.`).waitFor();
  return number;
};

interface Found {
  readonly rows: readonly { readonly number: string; readonly description: string }[];
}
const found = (page: Page, q: string): Promise<Found> =>
  page.evaluate(async (words) => (await fetch(`/api/assets?q=${words}&limit=200`)).json(), q);

describe("adding on the round", () => {
  test("two devices without a network add at the same time, and no two assets bear one number", async () => {
    const [dag, isel] = await Promise.all([caretaker("dag"), caretaker("isel")]);
    await Promise.all([toAdd(dag.page), toAdd(isel.page)]);
    await Promise.all([dag.context.setOffline(true), isel.context.setOffline(true)]);
    await Promise.all([
      addFirst(dag.page, "Offline lead D"),
      addFirst(isel.page, "Offline lead I"),
    ]);
    for (let at = 0; at < 9; at += 1)
      await Promise.all([addAnother(dag.page), addAnother(isel.page)]);
    await Promise.all([dag.context.setOffline(false), isel.context.setOffline(false)]);
    await Promise.all([drained(dag.page), drained(isel.page)]);
    const { rows } = await found(dag.page, "offline");
    expect(rows).toHaveLength(20);
    expect(new Set(rows.map(({ number }) => number)).size).toBe(20);
    const log = await dag.page.evaluate(async () => (await fetch("/api/logbook?limit=60")).json());
    const flags = log.rows.flatMap(
      ({ leaf }: { leaf: { flags: readonly string[] } }) => leaf.flags,
    );
    expect(flags).not.toContain("duplicate-number");
    await dag.close();
    await isel.close();
  });

  test("after the first an asset takes one tap, another description two, a copy with its particulars two: never more than four", async () => {
    const { page, close } = await caretaker("dag");
    await toAdd(page);
    await addFirst(page, "Counted lead");
    await countTaps(page);
    await addAnother(page);
    expect(await taps(page)).toBe(1);
    await page.locator(".choice").first().tap();
    const described = await page.getByRole("textbox", { name: "Description" }).inputValue();
    expect(described).not.toBe("Counted lead");
    await page.getByLabel("Length").fill("10");
    await addAnother(page);
    expect(await taps(page)).toBe(2);
    expect(await page.getByLabel("Length").inputValue()).toBe("");
    await page.getByRole("button", { name: /^Copy \S+ as new$/ }).tap();
    expect(await page.getByLabel("Length").inputValue()).toBe("10");
    expect(await page.getByLabel("Serial number").inputValue()).toBe("");
    await addAnother(page);
    expect(await taps(page)).toBe(2);
    // After a check in between it is all still there.
    await page.getByRole("button", { name: "Add and check" }).tap();
    await page.getByRole("link", { name: "Leave" }).waitFor();
    await page.goto(`${book.origin}/register/add`);
    expect(await page.getByLabel("Place, carried forward").inputValue()).not.toBe("");
    expect(await page.getByRole("textbox", { name: /Description/ }).inputValue()).toBe(described);
    await close();
  });

  test("what was scanned and is unknown begins with its number and place; a number in use is named", async () => {
    const { page, close } = await caretaker("isel");
    await toAdd(page);
    const place = await page
      .getByLabel("Place")
      .locator("option", { hasText: "Slipway" })
      .getAttribute("value");
    await page.goto(`${book.origin}/register/add?number=ZX-77&place=${place}`);
    await page.getByText("As written below").waitFor();
    expect(await page.getByLabel("Place").inputValue()).toBe(place);
    expect(await page.getByLabel("Number", { exact: true }).inputValue()).toBe("ZX-77");
    await page.getByLabel("Number", { exact: true }).fill("4033");
    await page.getByRole("button", { name: "Add another" }).tap();
    await page.getByText(/^4033 is taken by /).waitFor();
    await close();
  });

  test("a device that was leased nothing says that the number may clash, and a clash is shown on both", async () => {
    const { page, context, close } = await caretaker("isel");
    await context.route("**/api/number-blocks", (route) => route.abort());
    await withQueue(page);
    await page.evaluate(async () => {
      const opened = indexedDB.open("roundbook");
      await new Promise((resolve) => {
        opened.onsuccess = resolve;
      });
      const transaction = opened.result.transaction("settings", "readwrite");
      const store = transaction.objectStore("settings");
      const keys = store.getAllKeys();
      await new Promise((resolve) => {
        keys.onsuccess = resolve;
      });
      for (const key of keys.result) if (String(key).startsWith("numbers:")) store.delete(key);
      await new Promise((resolve) => {
        transaction.oncomplete = resolve;
      });
      opened.result.close();
    });
    await page.goto(`${book.origin}/register/add`);
    await page.getByText(/None are kept for this device: another may give out the same/).waitFor();
    await context.setOffline(true);
    const number = (await page.locator(".title-number").innerText()).trim();
    await addFirst(page, "Clashing lead");
    // Meanwhile the desk gives the same number to another.
    const other = await caretaker("dag");
    await other.page.goto(`${book.origin}/register/add?number=${number}`);
    await addFirst(other.page, "First come lead");
    await drained(other.page);
    await context.setOffline(false);
    await drained(page);
    await page.goto(`${book.origin}/register`);
    await page
      .getByPlaceholder(/Number, name/)
      .first()
      .fill("Clashing");
    await page
      .getByRole("link", { name: /Clashing lead/ })
      .first()
      .click();
    await page.getByText(/Another asset bears this number too: First come lead/).waitFor();
    expect((await found(page, "lead")).rows.filter((one) => one.number === number)).toHaveLength(2);
    await page.getByRole("link", { name: "Open the other" }).click();
    await page.getByText(/Another asset bears this number too: Clashing lead/).waitFor();
    await other.close();
    await close();
  });

  test("moved here without a network stands at its new place at once, and in the history once it is sent; copied as new it leaves number and serial behind", async () => {
    const { page, context, close } = await caretaker("dag");
    await page.goto(`${book.origin}/asset/number:4033`);
    await page.getByRole("button", { name: "Moved here" }).waitFor();
    await context.setOffline(true);
    await page.getByRole("button", { name: "Moved here" }).tap();
    await page.locator(".choice", { hasText: "Slipway" }).tap();
    await page.getByRole("button", { name: "Write it down" }).tap();
    await page.getByText("It stands in Slipway from now on").waitFor();
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.getByRole("button", { name: "Close" }).tap();
    await page.getByText("Boat Workshop › Slipway").first().waitFor();
    await context.setOffline(false);
    await drained(page);
    await page.reload();
    await page.getByText("Stands elsewhere from now on").waitFor();
    expect(await words(page)).toContain("Boat Workshop › Slipway");
    await page.getByRole("link", { name: "Copy as new" }).tap();
    await page.getByText("Particulars as of 4033").waitFor();
    expect(await page.getByLabel("Number", { exact: true }).inputValue()).toBe("");
    expect(await page.getByLabel("Serial number").inputValue()).toBe("");
    expect(await page.getByLabel("Length").inputValue()).not.toBe("");
    await close();
  });

  test("a picture taken of a new asset is sealed with it and shown on its page on another device", async () => {
    const { page, close } = await caretaker("dag");
    await toAdd(page);
    const picture = await page.evaluate(async () => {
      const canvas = new OffscreenCanvas(40, 30);
      canvas.getContext("2d")?.fillRect(4, 4, 20, 20);
      const bytes = await (await canvas.convertToBlob({ type: "image/png" })).arrayBuffer();
      return [...new Uint8Array(bytes)];
    });
    await page.getByLabel("Picture of the asset").setInputFiles({
      name: "lead.png",
      mimeType: "image/png",
      buffer: Buffer.from(picture),
    });
    await page.locator(".photos img").waitFor();
    await addFirst(page, "Pictured lead");
    await drained(page);
    const other = await caretaker("isel");
    await other.page.goto(`${book.origin}/register`);
    await other.page
      .getByPlaceholder(/Number, name/)
      .first()
      .fill("Pictured");
    await other.page
      .getByRole("link", { name: /Pictured lead/ })
      .first()
      .click();
    const shown = other.page.locator(".photos img");
    await shown.waitFor();
    expect(await shown.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(40);
    await other.close();
    await close();
  });
});
