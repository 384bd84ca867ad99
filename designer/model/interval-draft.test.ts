import type { IntervalDefinition, IntervalRule } from "@roundbook/schemas";
import { expect, test } from "vitest";
import {
  type Around,
  asKind,
  beginInterval,
  beginRule,
  civilToday,
  lacking,
  RULE_KINDS,
  readDate,
  readDraft,
  withMembers,
} from "./interval-draft.ts";

const around: Around = {
  today: "2026-10-13",
  particulars: {
    use: { title: "Use", order: 1, type: "string", enum: ["rare", "daily"] },
  },
};

const RULES: readonly IntervalRule[] = [
  { kind: "from-last-done", every: "P6M", early: "P14D", late: "P1M", neverAfter: "P7M" },
  { kind: "by-result", score: "building", early: "P30D" },
  { kind: "anniversary", every: "P1M", anchor: "2026-10-31", within: "P7D", afterLate: "keep" },
  { kind: "each-period", period: "quarter", day: 15, whenClosed: "on-reopening" },
  { kind: "spacing", min: "P20D", max: "P40D", every: "P30D", onDayOff: "due-anyway" },
  { kind: "recurrence", rrule: "FREQ=MONTHLY;BYDAY=-1FR", start: "2026-10-30", late: "P2D" },
  { kind: "on-event", after: ["repaired", "reopened"], within: "P1W", early: "P3D", blocks: true },
  { kind: "on-usage", point: "hours", every: 250, unit: "h", early: 20, orAfter: "P1Y" },
  {
    kind: "by-risk",
    table: {
      policy: "unique",
      inputs: ["asset.use"],
      // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
      rules: [{ when: ["daily"], then: "P3M", basis: "own rule" }],
    },
    worse: { use: ["rare", "daily"] },
  },
];

test.each(RULES)("a kept draft of $kind comes back as it was written", (rule) => {
  const draft: IntervalDefinition = {
    ...{ title: "Ladder", assetType: "ladder", checklist: "c", basis: "own practice" },
    ...{ rule, covers: ["other"] },
  };
  expect(readDraft(JSON.parse(JSON.stringify(draft)), around)).toEqual(draft);
});

test("every kind of rule is offered, and there is a draft of each", () => {
  expect(RULES.map(({ kind }) => kind).toSorted()).toEqual([...RULE_KINDS].toSorted());
});

test.each(RULE_KINDS)("a draft of %s that lacks all or holds nonsense begins anew", (kind) => {
  const begun = beginRule(kind, { today: around.today });
  expect(readDraft({ rule: { kind } }, around).rule).toEqual(begun);
  const nonsense = Object.fromEntries(Object.keys(begun).map((name) => [name, null]));
  expect(readDraft({ rule: { ...nonsense, kind } }, around).rule).toEqual(begun);
});

test("what is no draft at all is an empty one", () => {
  expect(readDraft({}, around)).toEqual(beginInterval());
  expect(readDraft({ rule: { kind: "weekly" }, title: 7 }, around)).toEqual(beginInterval());
});

test.each(RULES)(
  "another kind than $kind keeps what both can say, and loses none of the bounds",
  (rule) => {
    const draft = { ...beginInterval("ladder", "c"), rule };
    for (const kind of RULE_KINDS) {
      const next = asKind(draft, kind, around).rule;
      expect(next.kind).toBe(kind);
      expect(next.neverAfter).toBe(rule.neverAfter);
      expect(next.whenClosed).toBe(rule.whenClosed);
      expect(next.onDayOff).toBe(rule.onDayOff);
    }
  },
);

test("a margin goes over to a kind that has one, an amount of use never does", () => {
  const [counted] = RULES;
  const draft = { ...beginInterval(), rule: counted as IntervalRule };
  expect(asKind(draft, "recurrence", around).rule).toMatchObject({ early: "P14D", late: "P1M" });
  expect(asKind(draft, "on-usage", around).rule).not.toHaveProperty("early");
  const byUse = { ...draft, rule: RULES[7] as IntervalRule };
  expect(asKind(byUse, "from-last-done", around).rule).toEqual({
    kind: "from-last-done",
    every: "P6M",
  });
});

test("a member set to undefined is gone, not written as nothing", () => {
  const rule = withMembers<"from-last-done">(
    { kind: "from-last-done", every: "P6M", early: "P1W" },
    { early: undefined },
  );
  expect(Object.keys(rule)).toEqual(["kind", "every"]);
});

test("what is still to be said is told by its place", () => {
  expect(lacking(beginInterval())).toEqual(["/assetType", "/checklist"]);
  const filled = beginInterval("ladder", "c");
  expect(lacking(filled)).toEqual([]);
  expect(lacking(asKind(filled, "by-result", around))).toEqual(["/rule/score"]);
  expect(lacking(asKind(filled, "on-usage", around))).toEqual(["/rule/point"]);
  expect(lacking(asKind(filled, "by-risk", { today: "2026-10-13" }))).toEqual([
    "/rule/table/inputs",
  ]);
});

test("a day is read as it is spoken or as ISO 8601 writes it", () => {
  expect(readDate("31 October 2026")).toBe("2026-10-31");
  expect(readDate("31\u00a0October 2026")).toBe("2026-10-31");
  expect(readDate("1 Mar 2027")).toBe("2027-03-01");
  expect(readDate("2026-10-31")).toBe("2026-10-31");
  for (const text of ["31 November 2026", "1 Foo 2026", "soon", ""])
    expect(readDate(text)).toBeUndefined();
});

test("today is the reader's own day", () => {
  expect(civilToday(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
});
