import { describe, expect, test } from "vitest";
import { day, dueOf, windowOf } from "../../testing/due-records.ts";
import { calendarOf } from "../calendar.ts";
import { formatCivilDate } from "../civil.ts";
import { computeWindow } from "../compute-window.ts";
import type { OnDayOff, RuleOf } from "../rule-schema.ts";

type Rule = RuleOf<"anniversary">;
const yearly = (more: Partial<Rule> = {}): Rule => ({
  kind: "anniversary",
  every: "P1Y",
  anchor: "2026-10-31",
  within: "P2M",
  afterLate: "restart",
  ...more,
});
const first = (rule: Rule, registered: string) => {
  const window = computeWindow(rule, { done: [], registered: day(registered) });
  return `${formatCivilDate(window.due)} ${window.why.code}`;
};

// Worked by hand from the calendar.
describe("a fixed series and an asset that was never done", () => {
  test.each([
    ["2026-10-30", "2026-10-31"],
    ["2026-10-31", "2026-10-31"],
    ["2026-11-01", "2027-10-31"],
    // A date of the series, not its beginning: nobody waits for years by a date far ahead.
    ["2020-03-01", "2020-10-31"],
    ["1999-11-01", "2000-10-31"],
    ["2120-11-01", "2121-10-31"],
  ])("registered %s it is due on %s", (registered, due) => {
    expect(first(yearly(), registered)).toBe(`${due} anniversary-first`);
  });

  test.each([
    ["2024-02-29", "P1M", "2026-02-01", "2026-02-28"],
    ["2026-01-31", "P1M", "2025-11-15", "2025-11-30"],
    ["2026-01-31", "P1M", "2025-12-01", "2025-12-31"],
    ["2026-01-05", "P1W", "1926-01-05", "1926-01-11"],
    ["2024-02-29", "P4Y", "2001-01-01", "2004-02-29"],
  ])("the dates before %s, every %s, are of the series too", (anchor, every, from, due) => {
    expect(first(yearly({ anchor, every, within: "P1D" }), from)).toBe(`${due} anniversary-first`);
  });
});

describe("a fixed series, done", () => {
  test("in the window of its first date, goes on to the next", () => {
    expect(dueOf(yearly(), "2026-09-01")).toBe("2027-10-31");
    expect(dueOf(yearly(), "2026-10-31")).toBe("2027-10-31");
  });

  test("before the window opens, stands, the first time and every time, and says so", () => {
    expect(dueOf(yearly(), "2026-08-31")).toBe("2026-10-31");
    expect(dueOf(yearly(), "2026-03-01", "2026-08-31")).toBe("2026-10-31");
    const window = windowOf(yearly(), "2026-10-01", "2027-06-01");
    expect(formatCivilDate(window.due)).toBe("2027-10-31");
    expect(window.why).toMatchObject({
      code: "anniversary-stands",
      params: { deadline: "2027-10-31", opens: "2027-09-01", date: "2027-06-01" },
    });
  });

  test("late, keeps its dates or leaves them for good, as the interval says", () => {
    expect(dueOf(yearly({ afterLate: "keep" }), "2026-10-01", "2027-12-01")).toBe("2028-10-31");
    expect(dueOf(yearly(), "2026-10-01", "2027-12-01")).toBe("2028-12-01");
    expect(dueOf(yearly(), "2026-10-01", "2027-12-01", "2028-11-01")).toBe("2029-12-01");
  });

  test("for the first time, joins the series however late it is", () => {
    expect(dueOf(yearly(), "2028-12-24")).toBe("2029-10-31");
  });
});

// The Gas Safety (Installation and Use) Regulations 1998, reg. 36A: whatever is done within the two
// months before a deadline is treated as done on it (from memory).
describe("done again for a deadline that is kept already", () => {
  const gas = yearly({ anchor: "2027-02-10" });
  const { anchor: _, ...plain } = gas;
  test.each<[string, Rule]>([
    ["a fixed series", gas],
    ["from the first time", plain],
  ])("%s: moves nothing", (_title, rule) => {
    const kept = ["2026-02-10", "2027-01-05"];
    expect(dueOf(rule, ...kept)).toBe("2028-02-10");
    expect(dueOf(rule, ...kept, "2027-01-20")).toBe("2028-02-10");
    expect(dueOf(rule, ...kept, "2027-01-20", "2027-02-10")).toBe("2028-02-10");
  });

  test("after that deadline it is too soon for the next, and counts anew", () => {
    expect(dueOf(plain, "2026-02-10", "2027-01-05", "2027-02-11")).toBe("2028-02-11");
  });
});

// 31 January 2027 is a Sunday.
describe("an anniversary on a day off", () => {
  const weekdays = [{ weekday: 7, reason: "Sunday" }];
  const calendar = calendarOf({ weekdays });
  const due = (onDayOff: OnDayOff, done: string, more: Partial<Rule> = {}) => {
    const rule = yearly({ anchor: "2026-01-31", onDayOff, ...more });
    const records = [rule.anchor ?? "", done].map((on) => ({
      entry: on,
      on: day(on),
      at: null,
      counts: true,
      next: {},
    }));
    return formatCivilDate(
      computeWindow(rule, { done: records, registered: day("2026-01-01"), calendar }).due,
    );
  };

  test("put off to Monday and done on it, is kept", () => {
    expect(due("roll-forward", "2027-02-01")).toBe("2028-01-31");
    expect(due("roll-forward", "2027-02-02")).toBe("2028-02-02");
  });

  test("rolled back or not moved at all, Monday is late", () => {
    expect(due("roll-back", "2027-02-01")).toBe("2028-02-01");
    expect(due("due-anyway", "2027-02-01")).toBe("2028-02-01");
  });

  test("not put off past the longest time the law allows, so Monday is late", () => {
    expect(due("roll-forward", "2027-02-01", { neverAfter: "P12M" })).toBe("2028-02-01");
  });
});
