import type { Browser, BrowserContext, Page } from "playwright-core";
import { expect } from "vitest";

export const PHONE = { width: 390, height: 844 };
export const DESKTOP = { width: 1280, height: 900 };

export interface Visitor {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What went wrong behind the page; a journey ends with none. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/** What a browser writes to its console when there is no network, which is no fault of a page. */
const AWAY = /ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED|ERR_CONNECTION_RESET|ERR_FAILED/;

/** Somebody with a browser of their own. */
export const visit = async (
  browser: Browser,
  viewport = DESKTOP,
  ink: "light" | "dark" = "light",
): Promise<Visitor> => {
  const phone = viewport.width < 900;
  const context = await browser.newContext({
    viewport,
    colorScheme: ink,
    timezoneId: "Europe/London",
    locale: "en-GB",
    hasTouch: phone,
    isMobile: phone,
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("console", (message) => {
    const signedOut = /401 \(Unauthorized\)/.test(message.text());
    if (message.type() === "error" && !AWAY.test(message.text()) && !signedOut)
      complaints.push(message.text());
  });
  return {
    page,
    context,
    complaints,
    close: async () => {
      await context.close();
      expect(complaints).toEqual([]);
    },
  };
};

export const signIn = async (page: Page, origin: string, name: string, password: string) => {
  await page.goto(`${origin}/`);
  await page.getByLabel("Sign-in name").fill(name);
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
};

/** Chooses a site and waits until its round is on this device. */
export const chooseSite = async (page: Page, site: string) => {
  await page.getByRole("link", { name: /^(Sites|Choose a site)$/ }).click();
  await page.getByRole("button", { name: new RegExp(site) }).click();
  await page.getByRole("heading", { level: 1, name: site }).waitFor();
};

/** A page's own width: nothing may stick out sideways. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

/** What a page says, with plain spaces for those that keep a figure and its unit on one line. */
export const words = async (page: Page): Promise<string> =>
  (await page.getByRole("main").innerText()).replaceAll("\u00a0", " ");
