import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Judged, judgedRecords } from "./judged-records.ts";
import type {} from "./judging-page.ts";
import { openUnderPolicy, type PageUnderPolicy } from "./under-policy.ts";

const ENTRY = fileURLToPath(new URL("./judging-page.ts", import.meta.url));

let opened: PageUnderPolicy;
let inPage: { readonly compiles: boolean; readonly records: readonly Judged[] };

beforeAll(async () => {
  opened = await openUnderPolicy(ENTRY);
  await opened.page.waitForFunction(() => window.judged !== undefined);
  const found = await opened.page.evaluate(() => window.judged);
  if (typeof found !== "object") throw new Error(found ?? "nothing was judged");
  inPage = found;
});

afterAll(() => opened?.close());

describe("judging in a browser", () => {
  it("runs where no text may become code", () => {
    expect(inPage.compiles).toBe(false);
  });

  it("comes to the judgements that Node comes to, to the last digit", async () => {
    const inNode = await judgedRecords();
    const count = inNode.reduce((sum, { records }) => sum + records, 0);
    expect(count).toBeGreaterThanOrEqual(3000);
    expect(inPage.records).toEqual(inNode);
  });

  it("was shown records of every outcome", async () => {
    const verdicts = new Set(inPage.records.flatMap((one) => one.verdicts));
    expect([...verdicts]).toEqual(
      expect.arrayContaining(["advisory", "fail", "pass", "undecided"]),
    );
  });
});
