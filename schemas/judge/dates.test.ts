import { describe, expect, test } from "vitest";
import type { Answer, Answers, Particulars } from "../checklist/answer-types.ts";
import type { LimitDefinition, PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf } from "./testing/checklists.ts";

const date = (
  limits?: LimitDefinition[],
  more: Partial<PointDefinition> = {},
): PointDefinition => ({
  $ref: "#/$defs/date",
  title: "Date",
  ...(limits === undefined ? {} : { limits }),
  ...more,
});

interface Given {
  readonly on?: string;
  readonly particulars?: Particulars;
  readonly answers?: Answers;
}

const judged = (limit: LimitDefinition, day: unknown, given: Given = {}) => {
  const judge = judgeOf({
    particulars: { made: { title: "Made", type: "string", format: "date" } },
    properties: {
      seal: date([limit]),
      opened: date(),
      asked: date(undefined, { ask: { when: "asset.made == '2020-01-01'" } }),
    },
  });
  return judge.judgePoint("seal", {
    particulars: given.particulars ?? {},
    answers: { ...given.answers, seal: day as Answer },
    ...(given.on === undefined ? {} : { on: given.on }),
  });
};

describe("a date", () => {
  test.each([
    [{ notBefore: "2026-02-28" }, "2026-02-28", "pass", "not-before"],
    [{ notBefore: "2026-02-28" }, "2026-02-27", "fail", "before-earliest"],
    [{ notAfter: "2026-02-28" }, "2026-02-28", "pass", "not-after"],
    [{ notAfter: "2026-02-28" }, "2026-03-01", "fail", "after-latest"],
    [{ notAfter: "2026-02-28", severity: "advisory" }, "2026-03-01", "advisory", "after-latest"],
  ] as const)("under %j, %s: %s", (limit, day, verdict, code) => {
    const { verdict: found, why, limits } = judged(limit, day);
    expect([found, why]).toEqual([verdict, { code, params: { value: day, bound: "2026-02-28" } }]);
    expect(limits[0]?.boundDate).toBe("2026-02-28");
  });

  test.each([
    ["nothing", undefined, "not-answered"],
    ["a day that does not exist", "2026-02-29", "no-such-day"],
    ["no date", "yesterday", "no-such-day"],
    ["a time of day with it", "2026-02-01T00:00:00Z", "no-such-day"],
    ["a number", 20_260_201, "not-an-answer"],
  ])("that is %s is undecided", (_, day, code) => {
    const { verdict, why } = judged({ notAfter: "2026-12-31" }, day);
    expect([verdict, why.code]).toEqual(["undecided", code]);
  });

  test("under the bound of a number is undecided", () => {
    expect(judged({ max: 3 }, "2026-02-01")).toMatchObject({
      verdict: "undecided",
      why: { code: "limit-not-for-kind" },
    });
  });

  test.each([
    // A month after the last of January is the last of February.
    [{ from: "today", plus: "P1M" }, { on: "2026-01-31" }, "2026-02-28"],
    [{ from: "today", minus: "P6M" }, { on: "2026-08-31" }, "2026-02-28"],
    [{ from: "today" }, { on: "2026-02-28" }, "2026-02-28"],
    [{ from: "asset.made", plus: "P10Y" }, { particulars: { made: "2016-02-29" } }, "2026-02-28"],
    [{ from: "answers.opened", plus: "P14D" }, { answers: { opened: "2026-02-14" } }, "2026-02-28"],
    [{ from: "today", plus: "P1Y", minus: "P1D" }, { on: "2025-03-01" }, "2026-02-28"],
  ] as const)("counted from %j is held against the calendar", (bound, given, last) => {
    expect(judged({ notAfter: bound }, last, given)).toMatchObject({
      verdict: "pass",
      limits: [{ boundDate: last }],
    });
    expect(judged({ notAfter: bound }, "2026-03-01", given).verdict).toBe("fail");
    expect(judged({ notBefore: bound }, last, given).verdict).toBe("pass");
    expect(judged({ notBefore: bound }, "2026-02-27", given).verdict).toBe("fail");
  });

  test.each([
    ["the day of the inspection", { from: "today" }, {}, "missing"],
    ["a day of the inspection that exists", { from: "today" }, { on: "2026-02-30" }, "missing"],
    ["the particular", { from: "asset.made" }, {}, "missing"],
    ["a particular that is a day", { from: "asset.made" }, { particulars: { made: "x" } }, null],
    ["the other answer", { from: "answers.opened" }, {}, "missing"],
    [
      "an answer instead of an absence",
      { from: "answers.opened" },
      { answers: { opened: { absent: { reason: "no-access" } } } },
      "missing",
    ],
    [
      "an answer to a point that is asked",
      { from: "answers.asked" },
      { particulars: { made: "2021-01-01" }, answers: { asked: "2030-01-01" } },
      "missing",
    ],
    [
      "a point that is known to be asked",
      { from: "answers.asked" },
      { answers: { asked: "2030-01-01" } },
      "missing",
    ],
    ["a point there is", { from: "answers.stranger" }, {}, "missing"],
  ] as const)("counted from a day is undecided without %s", (_, bound, given, code) => {
    for (const limit of [{ notAfter: bound }, { notBefore: bound }]) {
      const { verdict, why } = judged(limit, "2026-02-01", given);
      expect(verdict).toBe("undecided");
      if (code !== null) expect(why.code).toBe(code);
    }
  });
});
