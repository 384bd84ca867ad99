import type { Browser } from "playwright-core";
import { type Book, openBook } from "./book.ts";
import { chooseSite, PHONE, signIn, type Visitor, visit } from "./visitor.ts";

export const PASSWORD = "harbour-journey";

/** The demo estate on a server of its own; Ona Tarrel owns it, Dag and Isel walk it. */
export async function openDemoBook(browser: Browser): Promise<Book> {
  const book = await openBook();
  const { page, close } = await visit(browser);
  await page.goto(book.begin);
  await page.getByRole("button", { name: "Open the demo" }).click();
  await page.getByLabel("Your name").fill("Ona Tarrel");
  await page.getByLabel("Sign-in name").fill("ona");
  await page.getByLabel("Password").fill(PASSWORD);
  await page.getByRole("button", { name: "Open the demo" }).click();
  await page.getByText("Choose the site you walk.").waitFor();
  await close();
  return book;
}

/** Somebody who walks a site of the demo with their phone, ready to lose the network. */
export async function walkerOf(
  browser: Browser,
  book: Book,
  name: string,
  site = "Boat Workshop",
): Promise<Visitor> {
  const visitor = await visit(browser, PHONE);
  await signIn(visitor.page, book.origin, name, PASSWORD);
  await chooseSite(visitor.page, site);
  await visitor.page.evaluate(() => navigator.serviceWorker.ready);
  return visitor;
}
