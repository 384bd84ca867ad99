import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { PageCase, PageRun } from "./conformance-page.ts";
import { openUnderPolicy, type PageUnderPolicy } from "./under-policy.ts";

const ENTRY = fileURLToPath(new URL("./conformance-page.ts", import.meta.url));
let opened: PageUnderPolicy;
let found: PageRun;

beforeAll(async () => {
  opened = await openUnderPolicy(ENTRY);
  const { page } = opened;
  await page.waitForFunction(() => window.conformance !== undefined);
  // As JSON: a member named `__proto__` would not come across any other way.
  found = JSON.parse(await page.evaluate(() => JSON.stringify(window.conformance)));
});

afterAll(() => opened?.close());

const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

const differs = ({ outcome }: PageCase): boolean =>
  typeof outcome === "string" ||
  JSON.stringify(asJson(outcome.found)) !== JSON.stringify(asJson(outcome.expected));

describe("the cases of the language in a browser", () => {
  it("run where no text may become code", () => {
    expect(found.compiles).toBe(false);
  });

  it("come out as they do in Node; those of the meta-schema, which no browser compiles, run there alone", () => {
    expect(found.cases.length).toBeGreaterThanOrEqual(280);
    expect(found.cases.filter(differs)).toEqual([]);
  });
});
