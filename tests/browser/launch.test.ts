import { expect, it } from "vitest";
import { launchBrowser } from "./launch.ts";

it("a browser is found, starts and runs a page", async () => {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.setContent("<title>round</title>");
    expect(await page.title()).toBe("round");
  } finally {
    await browser.close();
  }
});
