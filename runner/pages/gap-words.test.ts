import { civilDate, type HistoryEntry } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { gapWords } from "./gap-words.ts";
import type { HistoryGap } from "./life-gaps.ts";

const today = civilDate(2026, 1, 10);
const gap = (more: Partial<HistoryGap> = {}): HistoryGap => ({
  interval: "i",
  title: "Temperatures",
  monthly: true,
  after: "e",
  from: civilDate(2025, 10, 14),
  to: civilDate(2025, 12, 9),
  missed: [civilDate(2025, 11, 30)],
  ...more,
});
const entry = (day: string) => ({ entry: { civilDate: day } }) as HistoryEntry;
const plain = (words: string) => words.replaceAll("\u00a0", " ");

test("a month that was missed is called by its name", () => {
  expect(plain(gapWords(gap(), [entry("2025-10-13"), entry("2025-12-10")], today))).toBe(
    "No entry from 14 October 2025 to 9 December 2025. November’s check was missed: latest 30 November 2025.",
  );
});

test("where something else was written, only the check is missing", () => {
  expect(gapWords(gap(), [entry("2025-11-02")], today)).toContain("No entry of “Temperatures”");
});

test("what was excused says why and is not called missed", () => {
  const words = gapWords(gap({ missed: [], excused: "the pier works" }), [], today);
  expect(words).toContain("Excused: closed for the pier works.");
  expect(words).not.toContain("missed");
});

test("what lasts is told since the last entry", () => {
  const words = plain(gapWords(gap({ to: null, monthly: false }), [], today));
  expect(words).toContain("No entry since 13 October 2025.");
});
