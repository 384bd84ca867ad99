import { civilDate } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { english } from "./messages.tsx";
import { whyWords } from "./why-words.ts";

const today = civilDate(2026, 10, 13);

test("a due date explains itself in words, with the year only where it is not this one", () => {
  const why = (date: string) =>
    whyWords(
      english,
      { code: "from-last-done", params: { every: "P6M", date, entry: "x" } },
      today,
    );
  expect(why("2026-04-30")).toBe("6 months from 30\u00a0April, when it was last done.");
  expect(why("2025-04-30")).toBe("6 months from 30\u00a0April 2025, when it was last done.");
});

test("a result that asks for no interval says so", () => {
  const why = { code: "at-once", params: { score: "building", date: "2026-10-13", entry: "x" } };
  expect(whyWords(english, why, today)).toBe("The result of 13\u00a0October asks for it at once.");
});

test("what moved a date is said after what set it", () => {
  const why = {
    code: "from-last-done",
    params: { every: "P12M", date: "2026-03-14", entry: "x" },
    moved: [{ code: "never-after", params: { limit: "P11M", date: "2027-02-14" } }],
  };
  expect(whyWords(english, why, today)).toBe(
    "12 months from 14\u00a0March, when it was last done. Brought back to 14\u00a0February 2027, as never more than 11 months may pass.",
  );
});

const said = (code: string, params: Record<string, string | number | string[] | null>) =>
  whyWords(english, { code, params }, today, (name) => (name === "use" ? "Kind of use" : name));

test("a day off is named with its weekday, and only once", () => {
  const given = { date: "2027-03-12", closed: "2027-03-14" };
  expect(said("rolled-back", { ...given, reason: "Sunday" })).toBe(
    "Rolled back from Sunday 14\u00a0March 2027 to 12\u00a0March 2027.",
  );
  expect(said("rolled-back", { ...given, reason: "Works" })).toContain("2027: Works.");
});

test("a series is told in words, a rare one without its rule", () => {
  const rare = "FREQ=YEARLY;BYWEEKNO=20;BYDAY=MO";
  const given = { date: "2026-09-25", entry: "x" };
  expect(said("recurrence", { ...given, rrule: "FREQ=MONTHLY;BYDAY=-1FR" })).toBe(
    "Due each month on the last Friday; last done 25\u00a0September.",
  );
  expect(said("recurrence", { ...given, rrule: rare })).not.toContain("FREQ");
});

test("factors and what is lacking are called by their titles", () => {
  expect(said("needs-particulars", { names: ["use", "wind"] })).toBe(
    "When it is due cannot be told: it needs kind of use and wind.",
  );
  const factors = ["use: daily", "outside: true"];
  expect(
    said("by-risk", { every: "P3M", factors, reason: "", date: "2026-10-01", entry: "x" }),
  ).toBe(
    "3 months from 1\u00a0October, when it was last done, for kind of use daily and outside yes.",
  );
});

test("what follows an event says which, and at once where it has no time", () => {
  expect(said("no-event-yet", { after: ["repaired", "modified"] })).toBe(
    "Due after a repair or a modification; nothing asks for it now.",
  );
  expect(said("after-repaired", { within: "P0D", date: "2026-10-01", entry: "x" })).toBe(
    "At once after the repair of 1\u00a0October.",
  );
});
