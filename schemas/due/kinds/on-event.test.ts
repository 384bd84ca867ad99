import { describe, expect, test } from "vitest";
import { day, doneOn } from "../../testing/due-records.ts";
import { calendarOf } from "../calendar.ts";
import { formatCivilDate } from "../civil.ts";
import { computeWindow, statusOn } from "../compute-window.ts";
import type { DueEvent, DueFacts } from "../facts.ts";
import type { RuleOf } from "../rule-schema.ts";
import { type DoneRecord, hasDates } from "../window.ts";

type Rule = RuleOf<"on-event">;
const rule = (more: Partial<Rule> = {}): Rule => ({
  kind: "on-event",
  after: ["repaired", "modified", "returned"],
  within: "P0D",
  ...more,
});
const event = (kind: DueEvent["kind"], on: string, at: number | null = null): DueEvent => ({
  kind,
  entry: `${kind} ${on} ${at}`,
  on: day(on),
  at,
});
const done = (on: string, at: number | null = null): DoneRecord => ({ ...doneOn(on), at });
const windowOf = (given: Rule, facts: Partial<DueFacts>) =>
  computeWindow(given, { done: [], registered: day("2026-01-01"), ...facts });
const dueOf = (given: Rule, facts: Partial<DueFacts>) => {
  const window = windowOf(given, facts);
  return hasDates(window) ? `${formatCivilDate(window.due)} ${window.why.code}` : window.why.code;
};

describe("after an event", () => {
  test.each(["repaired", "modified", "returned"] as const)(
    "%s: due within the time given",
    (kind) => {
      const facts = { done: [done("2026-02-01")], events: [event(kind, "2026-03-01")] };
      expect(dueOf(rule({ within: "P7D" }), facts)).toBe(`2026-03-08 after-${kind}`);
      expect(dueOf(rule({ within: "P7D", after: ["reopened"] }), facts)).toBe("no-event-yet");
    },
  );

  test("without one there is no date, done or not", () => {
    expect(dueOf(rule(), {})).toBe("no-event-yet");
    expect(dueOf(rule(), { done: [done("2026-02-01")] })).toBe("no-event-yet");
    expect(statusOn(windowOf(rule(), {}), day("2030-01-01"))).toBe("not-yet");
  });

  test("a check on a later day answers it, one on an earlier day does not", () => {
    const events = [event("repaired", "2026-03-01")];
    expect(dueOf(rule(), { events, done: [done("2026-02-28")] })).toBe("2026-03-01 after-repaired");
    expect(dueOf(rule(), { events, done: [done("2026-03-02")] })).toBe("no-event-yet");
  });

  test("on the same day the clock tells, and where it is not known the event still asks", () => {
    const events = [event("repaired", "2026-03-01", 1000)];
    const asks = "2026-03-01 after-repaired";
    expect(dueOf(rule(), { events, done: [done("2026-03-01", 999)] })).toBe(asks);
    expect(dueOf(rule(), { events, done: [done("2026-03-01", 1000)] })).toBe("no-event-yet");
    expect(dueOf(rule(), { events, done: [done("2026-03-01")] })).toBe(asks);
    expect(
      dueOf(rule(), { events: [event("repaired", "2026-03-01")], done: [done("2026-03-01", 5)] }),
    ).toBe(asks);
  });

  test("the check that failed does not answer its own repair; the one after it does", () => {
    const events = [event("repaired", "2026-03-01", 2000)];
    const both = [done("2026-03-01", 1000), { ...done("2026-03-01", 3000), entry: "again" }];
    expect(dueOf(rule(), { events, done: both.slice(0, 1) })).toBe("2026-03-01 after-repaired");
    expect(dueOf(rule(), { events, done: both })).toBe("no-event-yet");
  });

  test("the earliest that nothing answered decides, in whatever order they come", () => {
    const events = [
      event("returned", "2026-05-01"),
      event("modified", "2026-04-01", 9),
      event("repaired", "2026-04-01", 8),
      event("repaired", "2026-03-01"),
    ];
    const facts = { done: [done("2026-03-15")], events };
    expect(dueOf(rule(), facts)).toBe("2026-04-01 after-repaired");
    expect(windowOf(rule(), { ...facts, events: events.toReversed() })).toEqual(
      windowOf(rule(), facts),
    );
  });

  test("it may block use until it is done, overdue or not", () => {
    const events = [event("modified", "2026-03-01")];
    const window = windowOf(rule({ within: "P7D", blocks: true }), { events });
    expect(
      ["2026-02-28", "2026-03-01", "2026-03-09", "2027-01-01"].map((on) =>
        statusOn(window, day(on)),
      ),
    ).toEqual(["not-yet", "blocked", "blocked", "blocked"]);
    const free = windowOf(rule({ blocks: true }), { events, done: [done("2026-03-02")] });
    expect(statusOn(free, day("2026-03-02"))).toBe("not-yet");
  });

  test("what blocks use stays blocked while the place is closed, whatever is excused", () => {
    const calendar = calendarOf({
      closures: [{ from: "2026-07-23", to: "2026-09-01", reason: "summer" }],
    });
    const given = rule({ within: "P7D", blocks: true, whenClosed: "excused" });
    const window = windowOf(given, { calendar, events: [event("repaired", "2026-07-20")] });
    expect(formatCivilDate(window.due)).toBe("2026-09-02");
    expect(statusOn(window, day("2026-08-01"))).toBe("blocked");
  });

  test("a longest time holds though nothing asks", () => {
    const facts = { done: [done("2026-02-01")] };
    expect(dueOf(rule({ neverAfter: "P1Y" }), facts)).toBe("2027-02-01 no-event-yet");
  });
});

describe("on reopening", () => {
  const calendar = calendarOf({
    seasons: [{ from: "11-01", to: "03-19", reason: "laid up for the winter" }],
    closures: [{ from: "2026-07-23", to: "2026-09-01", reason: "summer" }],
    weekdays: [{ weekday: 7, reason: "Sunday" }],
  });
  const opening = rule({ after: ["reopened"], early: "P14D", blocks: true });
  const due = (on: string | null, more: Partial<Rule> = {}) =>
    dueOf({ ...opening, ...more }, { calendar, done: on === null ? [] : [done(on)] });

  test("after a season or a closure, the first that no check has answered", () => {
    expect(due(null)).toBe("2026-03-20 after-reopened");
    expect(due("2026-03-20")).toBe("2026-09-02 after-reopened");
    expect(due("2026-09-02")).toBe("2027-03-20 after-reopened");
  });

  test("done early, as it is made ready, answers the reopening; sooner does not", () => {
    expect(due("2027-03-06")).toBe("2028-03-20 after-reopened");
    expect(due("2027-03-05")).toBe("2027-03-20 after-reopened");
  });

  test("what was done before it closed never answers how it reopens", () => {
    expect(due("2026-07-22", { early: "P3M" })).toBe("2026-09-02 after-reopened");
    expect(due("2026-07-23", { early: "P3M" })).toBe("2027-03-20 after-reopened");
  });

  test("not used from the reopening on until it is done, and long after", () => {
    const window = windowOf(opening, { calendar, done: [done("2026-10-01")] });
    expect(
      ["2027-03-05", "2027-03-06", "2027-03-19", "2027-03-20", "2028-01-01"].map((on) =>
        statusOn(window, day(on)),
      ),
    ).toEqual(["not-yet", "early", "early", "blocked", "blocked"]);
  });

  test("an event before it decides, one after it does not", () => {
    const both = rule({ after: ["reopened", "repaired"] });
    const facts = { calendar, done: [done("2026-03-20")] };
    const events = [event("repaired", "2026-09-10")];
    expect(dueOf(both, { ...facts, events })).toBe("2026-09-02 after-reopened");
    const sooner = [...events, event("repaired", "2026-04-10")];
    expect(dueOf(both, { ...facts, events: sooner })).toBe("2026-04-10 after-repaired");
  });

  test("without a closure to come there is none", () => {
    expect(dueOf(opening, { calendar: calendarOf({ weekdays: [] }) })).toBe("no-event-yet");
    expect(dueOf(opening, {})).toBe("no-event-yet");
  });
});
