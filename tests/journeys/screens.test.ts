import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser } from "../browser/launch.ts";
import { type Book, openBook } from "./book.ts";
import { chooseSite, DESKTOP, overflow, PHONE, signIn, visit } from "./visitor.ts";

const PASSWORD = "harbour-journey";
/** Where the pictures of the screens go; the README's own are made by naming `tests/pictures`. */
const PICTURES =
  process.env.ROUNDBOOK_PICTURES ??
  fileURLToPath(new URL("../../.cache/pictures", import.meta.url));
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let browser: Browser;
let book: Book;

beforeAll(async () => {
  mkdirSync(PICTURES, { recursive: true });
  browser = await launchBrowser();
  book = await openBook();
  const owner = await visit(browser);
  await owner.page.goto(book.begin);
  await owner.page.getByRole("button", { name: "Open the demo" }).click();
  await owner.page.getByLabel("Your name").fill("Ona Tarrel");
  await owner.page.getByLabel("Sign-in name").fill("ona");
  await owner.page.getByLabel("Password").fill(PASSWORD);
  await owner.page.getByRole("button", { name: "Open the demo" }).click();
  await owner.page.getByText("Choose the site you walk.").waitFor();
  await owner.close();
});
afterAll(async () => {
  await browser?.close();
  await book?.close();
});

interface Screen {
  readonly name: string;
  go(page: Page): Promise<void>;
}

const open =
  (path: string, text: string | RegExp) =>
  async (page: Page): Promise<void> => {
    await page.goto(book.origin + path);
    await page.getByRole("main").getByText(text).first().waitFor();
  };

const SCREENS: readonly Screen[] = [
  { name: "round", go: (page) => open("/", "Machine shop")(page) },
  {
    name: "fill",
    go: async (page) => {
      await open("/", "Machine shop")(page);
      await page.getByPlaceholder("Scan, number or name").fill("4033");
      await page.keyboard.press("Enter");
      const cautions = page.getByRole("button", { name: "Read and understood" });
      await cautions
        .or(page.getByRole("button", { name: /^Next/ }))
        .first()
        .waitFor();
      if (await cautions.isVisible()) await cautions.click();
      await page.getByRole("button", { name: /^Next/ }).waitFor();
    },
  },
  { name: "register", go: (page) => open("/register", /assets kept/)(page) },
  {
    name: "add",
    go: async (page) => {
      await open("/register/add", /kept for this device/)(page);
      await page.getByLabel("Type").selectOption({ label: "Extension lead" });
      await page.getByText("Take a picture of it").waitFor();
    },
  },
  {
    name: "move",
    go: async (page) => {
      await open("/asset/number:4033", "History")(page);
      await page.getByRole("button", { name: "Moved here" }).click();
      await page.getByRole("button", { name: "Write it down" }).waitFor();
    },
  },
  { name: "life", go: (page) => open("/asset/number:4033", "History")(page) },
  { name: "defects", go: (page) => open("/defects", /open, \d+ of them/)(page) },
  { name: "logbook", go: (page) => open("/logbook", /Inspection|issue 1|Registered/)(page) },
  { name: "device", go: (page) => open("/device", "Kept here")(page) },
  { name: "checklists", go: (page) => open("/designer/", "Extension lead")(page) },
  {
    name: "editor",
    go: async (page) => {
      await open("/designer/", "Extension lead")(page);
      await page
        .getByRole("link", { name: /Extension lead/ })
        .last()
        .click();
      await page.getByRole("button", { name: /^(Draft of issue|Go on with)/ }).click();
      await page.getByRole("button", { name: "Issue…" }).waitFor();
      await page
        .getByRole("button", { name: /Earth continuity/ })
        .first()
        .click();
      await page.getByText("asks", { exact: true }).first().waitFor();
    },
  },
  { name: "asset-types", go: (page) => open("/designer/asset-types", /version|particular/)(page) },
  { name: "intervals", go: (page) => open("/designer/intervals", /from last done/)(page) },
  {
    name: "interval",
    go: async (page) => {
      await open("/designer/intervals", /from last done/)(page);
      await page.getByRole("link", { name: /Calorifier, yearly inspection/ }).click();
      await page.getByText("If it were in force today").waitFor();
      await page.getByText(/would be overdue/).waitFor();
    },
  },
  { name: "plan", go: (page) => open("/designer/plan", /checks/)(page) },
  { name: "due-list", go: (page) => open("/designer/due", "Fire door, quarterly")(page) },
  {
    name: "asset-desk",
    go: async (page) => {
      await open("/designer/due", "Fire door, quarterly")(page);
      await page
        .getByRole("link", { name: /Extension ladder/ })
        .first()
        .click();
      await page.getByRole("button", { name: /Ladder, formal inspection/ }).click();
      await page.getByText("A rule of its own: ").waitFor();
    },
  },
  { name: "life-water", go: (page) => open("/asset/number:7104", "History")(page) },
  { name: "estate", go: (page) => open("/designer/estate", "Boat Workshop")(page) },
];

/** Rules of WCAG 2.2 AA as axe-core knows them; each violation with the first element it names. */
const violations = async (page: Page): Promise<string[]> => {
  // The page's policy refuses scripts put into it, so axe is evaluated from outside.
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const axe = (window as unknown as { axe: { run(options: object): Promise<AxeResult> } }).axe;
    interface AxeResult {
      violations: { id: string; nodes: { target: unknown[] }[] }[];
    }
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    const found = await axe.run({ runOnly: { type: "tag", values: tags } });
    return found.violations.map(({ id, nodes }) => `${id}: ${String(nodes[0]?.target)}`);
  });
};

describe.each([
  { where: "phone", viewport: PHONE, ink: "light" },
  { where: "phone-dark", viewport: PHONE, ink: "dark" },
  { where: "desktop", viewport: DESKTOP, ink: "light" },
  { where: "desktop-dark", viewport: DESKTOP, ink: "dark" },
] as const)("every screen on a $where", ({ where, viewport, ink }) => {
  test("fits its width, breaks no rule of WCAG 2.2 AA, and complains of nothing", async () => {
    const reader = await visit(browser, viewport, ink);
    const { page } = reader;
    await signIn(page, book.origin, "ona", PASSWORD);
    await chooseSite(page, "Boat Workshop");
    const found: string[] = [];
    for (const { name, go } of SCREENS) {
      await go(page);
      if ((await overflow(page)) > 0) found.push(`${name}: wider than its window`);
      // In a window of its full height: a row half under the dock is only a scroll away.
      await page.setViewportSize({ ...viewport, height: 4000 });
      for (const violation of await violations(page)) found.push(`${name}: ${violation}`);
      await page.setViewportSize(viewport);
      await page.screenshot({ path: join(PICTURES, `${name}-${where}.png`) });
    }
    expect(found).toEqual([]);
    await reader.close();
  });
});
