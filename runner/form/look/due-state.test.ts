import { describe, expect, test } from "vitest";
import { type DueDays, dotBetween, dueState } from "./due-state.ts";

const days = (today: number, changes: Partial<DueDays> = {}): DueDays => ({
  earliest: 100,
  due: 110,
  latest: 115,
  today,
  ...changes,
});

describe("the state of a due mark", () => {
  test("before the earliest day it is not yet", () => {
    expect(dueState(days(99))).toBe("not-yet");
  });

  test("from the earliest day to the day before the latest it is in its window", () => {
    expect(dueState(days(100))).toBe("in-window");
    expect(dueState(days(114))).toBe("in-window");
  });

  test("past the due day but within the window nothing is overdue", () => {
    expect(dueState(days(111))).toBe("in-window");
  });

  test("the latest day itself is the last day, not overdue", () => {
    expect(dueState(days(115))).toBe("last-day");
  });

  test("overdue begins the day after the latest", () => {
    expect(dueState(days(116))).toBe("over");
  });

  test.each(["earliest", "due", "latest"] as const)(
    "without its %s day it is undecided",
    (name) => {
      expect(dueState(days(200, { [name]: null }))).toBe("undecided");
    },
  );

  test("a day that is no number is undecided, never in its window", () => {
    expect(dueState(days(Number.NaN))).toBe("undecided");
    expect(dueState(days(105, { latest: Number.NaN }))).toBe("undecided");
  });

  test("a window of one day is on its last day", () => {
    expect(dueState(days(110, { earliest: 110, latest: 110 }))).toBe("last-day");
  });
});

describe("today's dot between the bars", () => {
  test("keeps clear of both bars, which stand at 6 and 66", () => {
    expect(dotBetween(days(100))).toBe(9);
    expect(dotBetween(days(115))).toBe(63);
  });

  test("moves evenly with the days", () => {
    expect(dotBetween(days(105))).toBe(27);
  });
});
