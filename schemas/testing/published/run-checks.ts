import { expect } from "vitest";
import { formatCivilDate, parseCivilDate } from "../../due/civil.ts";
import { computeWindow } from "../../due/compute-window.ts";
import { judgeOf } from "../../judge/testing/checklists.ts";
import type { CivilDate } from "../../shared/ids.ts";
import { roundSignificant } from "../../shared/significant.ts";
import { convert } from "../../units/units.ts";
import type { ConversionCheck, DueCheck, JudgedCheck } from "./checked-fact.ts";

const day = (iso: string): CivilDate => {
  const parsed = parseCivilDate(iso);
  if (parsed === undefined) throw new Error(`${iso} is no day`);
  return parsed;
};

/** Expects the verdict of every case, and the bound that the rule comes to. */
export const expectJudged = (check: JudgedCheck): void => {
  const { says, parts = {}, point, asset = {}, answers = {}, on, cases, bound } = check;
  const judge = judgeOf({ ...parts, properties: { ...parts.properties, x: point } });
  for (const [answer, verdict] of cases) {
    const judged = judge.judgePoint("x", {
      particulars: asset,
      answers: { ...answers, x: answer },
      ...(on === undefined ? {} : { on }),
    });
    expect([says, answer, judged.verdict]).toEqual([says, answer, verdict]);
    if (bound !== undefined) expect(judged.limits.map((limit) => limit.bound)).toContain(bound);
  }
};

export const expectDue = ({ rule, done, due, earliest }: DueCheck): void => {
  const record = { entry: "1", on: day(done), at: null, counts: true, next: {} };
  const window = computeWindow(rule, { done: [record], registered: day("2000-01-01") });
  expect(formatCivilDate(window.due)).toBe(due);
  if (earliest !== undefined) expect(formatCivilDate(window.earliest)).toBe(earliest);
};

export const expectConverted = ({ from, to, within }: ConversionCheck): void => {
  const found = convert(from[0], from[1], to[1]) ?? Number.NaN;
  if (within === undefined) expect(roundSignificant(found)).toBe(to[0]);
  else expect(Math.abs(found - to[0])).toBeLessThanOrEqual(within);
};
