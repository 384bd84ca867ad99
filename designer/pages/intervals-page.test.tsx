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

const SENTENCES: readonly (readonly [IntervalDefinition["rule"], string])[] = [
  [
    { kind: "from-last-done", every: "P3M", early: "P14D", late: "P7D", whenClosed: "excused" },
    "every 3 months from last done, 14 days before to 7 days after; excused while closed",
  ],
  [
    { kind: "on-event", after: ["repaired"], within: "P1W", blocks: true },
    "within 1 week of a repair, not used before it is done",
  ],
  [
    { kind: "on-usage", point: "hours", every: 250, unit: "h", early: 20, orAfter: "P1Y" },
    "every 250 h of “hours”, or 1 year after last done",
  ],
  [
    {
      kind: "by-risk",
      table: {
        policy: "unique",
        inputs: ["asset.use"],
        rules: [
          // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
          { when: ["daily"], then: "P3M" },
          // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
          { when: ["rare"], then: "P1Y" },
        ],
      },
      worse: { use: ["rare", "daily"] },
    },
    "every 3 months to 1 year, by use",
  ],
  [
    { kind: "each-period", period: "week", neverAfter: "P10D" },
    "once in each calendar week, never more than 10 days from one to the next",
  ],
];

test.each(SENTENCES)("$kind in one sentence: %s", async (rule, words) => {
  const intervals = [{ id: ID, definition: { ...definition, rule } }];
  page = await mountIntervals("/intervals", { intervals, types: [], checklists: [] });
  expect(page.text()).toContain(words);
});
