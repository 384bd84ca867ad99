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
