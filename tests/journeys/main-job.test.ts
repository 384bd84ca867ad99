import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser } from "../browser/launch.ts";
import { type Book, openBook } from "./book.ts";
import { chooseSite, DESKTOP, PHONE, signIn, type Visitor, visit, words } from "./visitor.ts";

const PASSWORD = "harbour-journey";
let browser: Browser;
let book: Book;
let manager: Visitor;

beforeAll(async () => {
  browser = await launchBrowser();
  book = await openBook();
  manager = await visit(browser, DESKTOP);
});
afterAll(async () => {
  await browser?.close();
  await book?.close();
});

const blank = (page: Page, name: string | RegExp) =>
  page.getByRole("main").getByRole("button", { name, exact: typeof name === "string" });

const addPoint = async (page: Page, kind: string, question: string) => {
  await page.getByLabel("Question", { exact: true }).last().fill(question);
  await page.getByLabel("What it asks for").selectOption(kind);
  await blank(page, "Another point").click();
  await page.getByRole("main").getByRole("button", { name: question }).first().waitFor();
};

/** Opens a blank, writes into it and closes it with Enter. */
const write = async (page: Page, name: string, text: string) => {
  await blank(page, name).click();
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
};

describe("a manager, a caretaker and an auditor on an empty book", () => {
  test("the printed address begins a book of one's own", async () => {
    const { page } = manager;
    await page.goto(book.begin);
    await page.getByRole("button", { name: "Begin", exact: true }).click();
    await page.getByLabel("Name of the estate").fill("Journey Harbour");
    await page.getByLabel("Your name").fill("Mara Quill");
    await page.getByLabel("Sign-in name").fill("mara");
    await page.getByLabel("Password").fill(PASSWORD);
    await page.getByRole("button", { name: "Begin", exact: true }).click();
    await page.getByText("Choose the site you walk.").waitFor();
    expect(await page.locator(".contents").innerText()).toContain("Journey Harbour");
  });

  test("a checklist is made from nothing, tried, and issued with its hash", async () => {
    const { page } = manager;
    await page.goto(`${book.origin}/designer/`);
    await page.getByText("No checklist yet.").waitFor();
    await page.getByLabel("What is it called?").fill("Water outlet, monthly");
    await page.getByRole("button", { name: "Begin it" }).click();
    await addPoint(page, "check", "Tap whole?");
    await addPoint(page, "choice", "State of the spout");
    await addPoint(page, "graded", "Cleanliness");
    await addPoint(page, "text", "Anything else?");
    await addPoint(page, "photo", "Picture of the outlet");
    await addPoint(page, "reading", "Hot water after a minute");
    await blank(page, "Another limit").click();
    await page.keyboard.type("50");
    await page.keyboard.press("Enter");
    await blank(page, "above").click();
    await blank(page, "below").click();
    // HSE HSG274 part 2: hot water at the outlet reaches 50 °C within a minute.
    await write(page, "Basis, not written", "HSE HSG274 part 2");
    await blank(page, "not graded").click();
    await blank(page, "a danger now").click();
    await expect.poll(() => page.locator(".facing").innerText()).toContain("Tap whole?");
    await page.getByRole("button", { name: "Issue…" }).click();
    await page.getByRole("button", { name: "Sign and issue 1" }).click();
    await page.getByText("It cannot be changed, only followed by another.").waitFor();
    expect(await words(page)).toMatch(/Hash\s+[0-9a-f]{64}/);
  });

  test("an asset type, an interval, an asset and a caretaker follow", async () => {
    const { page } = manager;
    await page.goto(`${book.origin}/designer/asset-types/new`);
    await page.getByLabel("What is it called?").fill("Water outlet");
    await blank(page, "Another particular").click();
    await page.getByLabel("What it is").fill("Feeds");
    await page.getByLabel("Kind").selectOption("string");
    await page.getByLabel("Water outlet, monthly").check();
    await page.getByRole("button", { name: "Put in force" }).click();
    await page.getByText("In force as version 1.").waitFor();
    await page.goto(`${book.origin}/designer/intervals/new`);
    await blank(page, "a name…").click();
    await page.getByLabel("What is it called?").fill("Outlets, every six months");
    await page.getByRole("button", { name: "Done", exact: true }).click();
    await blank(page, "assets of a type…").click();
    await page.getByRole("button", { name: "Water outlet", exact: true }).click();
    await blank(page, "a checklist…").click();
    await page.getByRole("button", { name: "Water outlet, monthly", exact: true }).click();
    await page.getByRole("button", { name: "Put in force…" }).click();
    await page.getByLabel("Why is it changed?").fill("A first interval for the outlets");
    await page.getByRole("button", { name: "Put in force", exact: true }).click();
    await page.getByText("Every date of its assets follows it now.").waitFor();
    await page.goto(`${book.origin}/designer/estate`);
    const asset = page.getByRole("form", { name: "Register one asset" });
    await asset.getByLabel("Number", { exact: true }).fill("501");
    await asset.getByLabel("What it is", { exact: true }).fill("Wash-hand basin");
    await asset.getByLabel("Type", { exact: true }).selectOption({ label: "Water outlet" });
    await asset.getByLabel("Place", { exact: true }).selectOption({ index: 1 });
    await asset.getByRole("button", { name: "Register it" }).click();
    await page.getByText("501 is registered.").waitFor();
    const people = page.getByRole("form", { name: "Another person" });
    for (const [name, role, signInName] of [
      ["Tam Oriel", "inspector", "tam"],
      ["Una Selwick", "auditor", "una"],
    ] as const) {
      await people.getByLabel("Name", { exact: true }).fill(name);
      await people.getByLabel("What they do").selectOption(role);
      await people.getByLabel("Sign-in name").fill(signInName);
      await people.getByLabel("First password").fill(PASSWORD);
      await people.getByRole("button", { name: "Add them" }).click();
      await page.getByText(`${name} can sign in now.`).waitFor();
    }
    expect(manager.complaints).toEqual([]);
    await manager.close();
  });

  test("a caretaker fills it without a network and it is sealed once there is one", async () => {
    const caretaker = await visit(browser, PHONE);
    const { page, context } = caretaker;
    await signIn(page, book.origin, "tam", PASSWORD);
    await chooseSite(page, "Journey Harbour");
    await page.getByPlaceholder("Scan, number or name").fill("501");
    await page.keyboard.press("Enter");
    await page.getByText("Tap whole?").waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await fillOutlet(page, "49,9");
    expect(await words(page)).toContain("0.1 °C below.");
    await page.reload();
    await page.getByText("Tap whole?").waitFor();
    await goToFinish(page);
    const before = await words(page);
    expect(before).toMatch(/Fail\s/);
    expect(before).toContain("6 months from");
    await page.getByRole("button", { name: "Sign and finish" }).click();
    await page.getByText(/Waits on this device/).waitFor();
    await context.setOffline(false);
    await page.getByText(/Sent: entry/).waitFor({ timeout: 60_000 });
    await page.getByRole("button", { name: "The round" }).click();
    await page.getByText("Everything due here is done.").waitFor();
    await caretaker.close();
  });

  test("an auditor reads the entry with the wording and the limit of its day, and writes nothing", async () => {
    const auditor = await visit(browser, DESKTOP);
    const { page } = auditor;
    await signIn(page, book.origin, "una", PASSWORD);
    await page.getByText("Choose the site you walk.").waitFor();
    // Nothing is kept on this device yet: the register says so, and entries still say their checklist.
    await page.goto(`${book.origin}/register`);
    await page.getByText("No site is kept on this device yet.").waitFor();
    await page.goto(`${book.origin}/logbook`);
    await page.getByText("Water outlet, monthly, issue 1").first().waitFor();
    await page.goto(`${book.origin}/`);
    await chooseSite(page, "Journey Harbour");
    await page.goto(`${book.origin}/asset/number:501`);
    await page.getByRole("link", { name: /Water outlet, monthly, issue 1/ }).click();
    await page.waitForURL(/\/entry\//);
    await page.getByText("Hot water after a minute").first().waitFor();
    const text = await words(page);
    expect(text).toContain("49.9");
    expect(text).toContain("min 50");
    expect(text).toContain("HSE HSG274 part 2");
    const status = await page.evaluate(async () => {
      const reply = await fetch("/api/places", {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ parent: null, level: "site", code: "9", name: "No", zone: "UTC" }),
      });
      return reply.status;
    });
    expect(status).toBe(403);
    await auditor.context.close();
  });
});

const next = (page: Page) => page.getByRole("button", { name: /^Next/ });

const fillOutlet = async (page: Page, figure: string) => {
  await page
    .getByRole("button", { name: "OK", exact: true })
    .or(page.getByLabel("OK", { exact: true }))
    .first()
    .click();
  await next(page).click();
  await page.getByText("Good", { exact: true }).first().click();
  await next(page).click();
  await page.getByText("5", { exact: true }).or(page.getByLabel(/^5/)).first().click();
  await next(page).click();
  await next(page).click();
  await next(page).click();
  for (const key of figure) {
    const name = key === "," ? "Decimal point" : key;
    await page.getByRole("button", { name, exact: true }).first().click();
  }
};

const goToFinish = async (page: Page) => {
  const finish = page.getByRole("button", { name: "Sign and finish" });
  for (let step = 0; step < 10 && !(await finish.isVisible()); step += 1) await next(page).click();
};
