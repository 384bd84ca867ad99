import type { HistoryEntry } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { cells } from "./history.ts";

const judged = (overall: string, more: object = {}) => ({
  overall,
  complete: true,
  pending: [],
  scores: {},
  points: {},
  ...more,
});
const rowOf = (judgement: object, more: object = {}) =>
  ({
    entry: { civilDate: "2026-03-02", kind: "inspection" },
    leaf: { seq: 30, judgement },
    authorName: "Dag Ruskeen",
    contents: {},
    ...more,
  }) as unknown as HistoryEntry;
const verdict = (row: HistoryEntry) => cells(row)[2];
const PENDING = judged("undecided", { complete: false, pending: ["lead"] });

test("a verdict of an inspection that is not complete says so, and what it waits for", () => {
  expect(verdict(rowOf(judged("pass")))).toBe("pass");
  expect(verdict(rowOf(judged("fail", { complete: false })))).toBe("fail; not complete");
  expect(verdict(rowOf(PENDING))).toBe("undecided; not complete; pending: lead");
});

test("a later result stands beside what was known when it was signed, by its entry", () => {
  const received = { entries: [], judgement: judged("fail"), since: 32 };
  expect(verdict(rowOf(PENDING, { received }))).toBe("undecided when signed; fail since entry 32");
  expect(verdict(rowOf(judged("fail"), { sample: "B-17" }))).toBe("sample B-17: fail");
});
