import type {
  AssetTypeRow,
  ChecklistRow,
  IntervalDefinition,
  IntervalRow,
  IntervalRule,
} from "@roundbook/schemas";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { emptyDocument } from "../model/draft-document.ts";
import { type Asked, type Desk, mountIntervals } from "../testing/mount-interval.tsx";

const ID = "01890000-0000-7000-8000-000000000001";
const OTHER = "01890000-0000-7000-8000-000000000002";
const CHECK = "01890000-0000-7000-8000-000000000003";

const TYPE: AssetTypeRow = {
  ...{ assetType: "ladder", version: 1, title: "Ladder", checklists: [CHECK] },
  particulars: {
    use: { title: "Use", order: 1, type: "string", enum: ["rare", "daily"] },
    pier: { title: "On the pier", order: 2, type: "boolean" },
  },
};
const CHECKLIST: ChecklistRow = {
  ...{ id: CHECK, issue: 1, hash: "0", title: "Ladder look", status: "issued" },
  issuedOn: "2026-01-01",
  document: {
    ...emptyDocument("Ladder look"),
    properties: {
      hours: { $ref: "#/$defs/reading", title: "Hours run", quantity: { unit: "h" } },
    },
  },
};
const EVERY: IntervalRule = { kind: "from-last-done", every: "P6M", early: "P14D" };
const definition = (rule: IntervalRule, more: Partial<IntervalDefinition> = {}) => ({
  ...{ title: "Ladder, formal", assetType: "ladder", checklist: CHECK, rule },
  ...more,
});
const row = (rule: IntervalRule, more: Partial<IntervalDefinition> = {}): IntervalRow => ({
  id: ID,
  definition: definition(rule, more),
});

const DATES = {
  asset: { id: OTHER, number: "4012", description: "Extension ladder" },
  dates: [
    {
      ...{ earliest: "2026-11-16", due: "2026-11-30", latest: "2026-11-30", plain: "2026-12-01" },
      why: { code: "each-month", params: { date: "2026-10-31", entry: "e" } },
    },
  ],
  ends: null,
};
const EFFECT = {
  ...{ assets: 12, overdueNow: 1, overdueThen: 2, examples: ["4012", "2009"] },
  ...{ sooner: 12, later: 0, undecided: 0, minutesAMonth: 80 },
};
const previews = ({ path }: Asked): object | undefined =>
  path.endsWith("/dates") ? DATES : path.endsWith("/effect") ? EFFECT : undefined;

let page: Awaited<ReturnType<typeof mountIntervals>>;
const open = async (desk: Partial<Desk>, path = `/intervals/${ID}`) => {
  page = await mountIntervals(path, {
    ...{ types: [TYPE], checklists: [CHECKLIST], answer: previews },
    ...desk,
  });
};
const lastDefinition = (path: string) =>
  page.asked.findLast((one) => one.path === path)?.body?.definition as IntervalDefinition;

beforeEach(() => {
  vi.useFakeTimers({ now: new Date(2026, 9, 13, 12) });
});
afterEach(async () => {
  await page.unmount();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test("an interval reads as sentences, beside its dates and what it would do", async () => {
  await open({ intervals: [row(EVERY, { basis: "own rule" })] });
  expect(page.text()).toContain("For Ladder: 12 assets. In force.");
  expect(page.text()).toContain("6 months, counted from the day it was last done");
  expect(page.text()).toContain("from 14 days before to the day itself");
  expect(page.text()).toContain("2 of 12 would be overdue, 1 is already: 4012, 2009.");
  expect(page.text()).toContain("12 dates come sooner, 0 later. About 1 h 20 min more work");
});

const KINDS: readonly (readonly [IntervalRule, string])[] = [
  [
    { kind: "anniversary", every: "P1M", anchor: "2026-10-31", within: "P7D", afterLate: "keep" },
    "1 month, counted from 31 October 2026 and kept on that day",
  ],
  [{ kind: "each-period", period: "month", day: 3 }, "calendar month, due on day 3 of it"],
  [
    { kind: "recurrence", rrule: "FREQ=MONTHLY;BYDAY=-1FR", start: "2026-10-30" },
    "month on the last Friday, from 30 October 2026",
  ],
  [
    { kind: "recurrence", rrule: "FREQ=MONTHLY;BYDAY=MO,TU;BYSETPOS=-1", start: "2026-10-30" },
    "the rule FREQ=MONTHLY;BYDAY=MO,TU;BYSETPOS=-1, from",
  ],
  [
    { kind: "spacing", min: "P3W", max: "P5W" },
    "no sooner than 3 weeks and no later than 5 weeks after it was last done, due after 5 weeks",
  ],
  [
    { kind: "on-event", after: ["repaired", "returned"], within: "P0D", blocks: true },
    "a repair or its return to use, within the same day; not to be used before it is done",
  ],
  [
    { kind: "on-usage", point: "hours", every: 250, unit: "h", orAfter: "P1Y" },
    "250 h of Hours run, as read by this checklist, or 1 year after it was last done",
  ],
  [
    {
      kind: "by-risk",
      table: {
        policy: "unique",
        inputs: ["asset.use"],
        rules: [
          // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
          { when: ["daily"], then: "P3M", basis: "council rule" },
        ],
      },
      worse: { use: ["rare", "daily"] },
    },
    "daily3 monthscouncil rule",
  ],
];

test.each(KINDS)("$kind: the sentence says %s", async (rule, words) => {
  await open({ intervals: [row(rule)] });
  expect(page.text()).toContain(words);
});

test("an edit is asked for after a pause, and what is refused stands by its sentence with the last dates", async () => {
  await open({ intervals: [row(EVERY)] });
  await page.press("14 days");
  await page.write("7 months");
  expect(page.text()).toContain("from 7 months before");
  expect(page.find("Put in force…")).toHaveProperty("disabled", true);
  expect(page.text()).toContain("4012 Extension ladder");
  expect(page.text()).toContain("The dates before the last change.");
  await page.key("z", { ctrlKey: true });
  await page.settle();
  expect(page.text()).toContain("from 14 days before");
  expect(page.find("Put in force…")).toHaveProperty("disabled", false);
  await page.key("y", { ctrlKey: true });
  expect(page.text()).toContain("from 7 months before");
});

test("what the server finds wrong stands by its sentence", async () => {
  const answer = (asked: Asked) =>
    asked.path.startsWith("/api/intervals/")
      ? Response.json(
          { problems: [{ pointer: "/definition/basis", code: "text-blank", params: {} }] },
          { status: 422 },
        )
      : undefined;
  await open({ intervals: [row(EVERY, { basis: "own rule" })], answer });
  const line = page.find("own rule").closest(".sentence");
  expect(line?.querySelector(".line-problem")).not.toBeNull();
});

test("it is put in force with a reason, and not without one, over what was read", async () => {
  await open({ intervals: [row(EVERY)] });
  await page.press("Put in force…");
  await page.press("Put in force");
  expect(page.asked.some(({ method }) => method === "PUT")).toBe(false);
  await page.write("The maker says so", ".force-reason input");
  await page.press("Put in force");
  expect(page.asked.find(({ method }) => method === "PUT")).toEqual({
    method: "PUT",
    path: `/api/intervals/${ID}`,
    body: { ...definition(EVERY), reason: "The maker says so", over: definition(EVERY) },
  });
});

test("what was put in force is no change any more", async () => {
  await open({ intervals: [row(EVERY)] });
  await page.press("14 days");
  await page.write("3 weeks");
  expect(page.text()).toContain("In force; this change is not. Not kept yet.");
  await page.press("Put in force…");
  await page.write("The wardens asked for it", ".force-reason input");
  await page.press("Put in force");
  expect(page.text()).toContain("In force. Every date of its assets follows it now.");
  expect(page.text()).not.toContain("this change is not");
});

test("a server that does not answer leaves the last dates standing, and says so", async () => {
  let away = false;
  const answer = (asked: Asked) =>
    away ? Response.json({ code: "http-503" }, { status: 503 }) : previews(asked);
  await open({ intervals: [row(EVERY)], answer });
  away = true;
  await page.press("14 days");
  await page.write("3 weeks");
  await page.settle();
  expect(page.text()).toContain("4012 Extension ladder");
  expect(page.text()).toContain("It could not be worked out just now");
});

test("a new one is kept as a draft under an id of its own, and nothing is put in force", async () => {
  const answer = (asked: Asked) =>
    asked.method === "PUT" ? { revision: 1, ...asked.body } : previews(asked);
  await open({ answer }, "/intervals/new");
  expect(page.text()).toContain("Not yet for any type of asset. Draft, not in force.");
  await page.press("assets of a type…");
  await page.press("Ladder");
  await page.press("Keep as draft");
  const kept = page.asked.find(({ method }) => method === "PUT");
  expect(kept?.path).toMatch(/^\/api\/interval-drafts\/[0-9a-f-]{36}$/);
  expect(kept?.body).toMatchObject({ revision: null, definition: { assetType: "ladder" } });
  expect(page.text()).toContain("Kept as a draft. Nothing changed for any asset.");
  expect(page.at()).toBe(`/intervals/${kept?.path.split("/").at(-1)}`);
});

test("a draft that somebody else kept meanwhile is not written over unasked", async () => {
  const drafts = [{ id: ID, revision: 3, definition: definition(EVERY), changedAt: "" }];
  const answer = (asked: Asked) => {
    if (asked.method !== "PUT") return previews(asked);
    return asked.body?.revision === 3
      ? Response.json({ code: "draft-changed", problems: [] }, { status: 409 })
      : { revision: 5 };
  };
  await open({ drafts, answer });
  drafts[0] = {
    id: ID,
    revision: 4,
    definition: definition({ ...EVERY, every: "P1Y" }),
    changedAt: "",
  };
  await page.press("Keep as draft");
  expect(page.text()).toContain("Somebody else kept a draft of this interval meanwhile.");
  await page.press("Take theirs");
  expect(page.text()).toContain("1 year, counted from");
});

test("another kind is chosen by plain words and keeps what both can say", async () => {
  await open({ intervals: [row(EVERY)] });
  await page.press("Another kind of interval");
  await page.press(/^on days of the calendar/);
  expect(page.text()).toContain("from 14 days before to the day itself");
  expect(lastDefinition("/api/intervals/dates").rule).toMatchObject({
    kind: "recurrence",
    early: "P14D",
    start: "2026-10-13",
  });
});

test("a rule that cannot be read is told at its place, and the page stands", async () => {
  const rule: IntervalRule = { kind: "recurrence", rrule: "FREQ=DAILY", start: "2026-10-13" };
  const other = { ...row(EVERY, { title: "Another" }), id: OTHER };
  await open({ intervals: [row(rule), other] });
  await page.press("Write it as an RRULE…");
  await page.write("FREQ=MONTHLY;BYDAY=5XX");
  expect(
    page
      .find(/^FREQ=/)
      .closest(".sentence")
      ?.querySelector(".formula-wrong")?.textContent,
  ).toBe("5XX");
  await page.press("nothing");
  expect(page.text()).toContain("Another");
});
