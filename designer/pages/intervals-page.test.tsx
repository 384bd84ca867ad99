import type { IntervalDefinition, IntervalRow } from "@roundbook/schemas";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { mountIntervals } from "../testing/mount-interval.tsx";

const ID = "01890000-0000-7000-8000-000000000001";
const OTHER = "01890000-0000-7000-8000-000000000002";
const definition: IntervalDefinition = {
  title: "Ladder, formal",
  assetType: "ladder",
  checklist: ID,
  rule: { kind: "recurrence", rrule: "FREQ=MONTHLY;BYDAY=-1FR", start: "2026-10-30" },
};

let page: Awaited<ReturnType<typeof mountIntervals>>;
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(async () => {
  await page.unmount();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test("each interval is a sentence; how far its dates are is said until they are there", async () => {
  const progress = { interval: ID, definition, done: 412, of: 3000 };
  const intervals: IntervalRow[] = [{ id: ID, definition, progress }];
  page = await mountIntervals("/intervals", { intervals, types: [], checklists: [] });
  expect(page.text()).toContain("each month on the last Friday");
  expect(page.text()).toContain("412 of 3 000 dates worked out");
  intervals[0] = { id: ID, definition };
  await page.settle();
  await page.settle();
  expect(page.text()).not.toContain("dates worked out");
});

test("a draft of a new interval is told from one in force", async () => {
  const drafts = [{ id: OTHER, revision: 1, definition: { title: "Weekly" }, changedAt: "" }];
  page = await mountIntervals("/intervals", { drafts, types: [], checklists: [] });
  expect(page.text()).toContain("Weekly");
  expect(page.text()).toContain("Draft, not in force");
});

test("without any, it says so and how the first is begun", async () => {
  page = await mountIntervals("/intervals", { types: [], checklists: [] });
  expect(page.text()).toContain("No interval yet.");
  expect(page.find("Begin the first one").getAttribute("href")).toBe("/designer/intervals/new");
});
