import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { splitAnswerName } from "../checklist/answer-name.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { STARTERS } from "../starters/index.ts";
import { compileJudge } from "./compile-judge.ts";
import type { Judgement } from "./judgement.ts";
import type { JudgeInput } from "./run.ts";
import { RICH } from "./testing/rich-checklist.ts";
import { sheetOf } from "./testing/sheets.ts";

const RUNS = { seed: 20_260_301, numRuns: 1000 };

const without = <T extends object>(from: T, gone: (name: string) => boolean): T =>
  Object.fromEntries(Object.entries(from).filter(([name]) => !gone(name))) as T;

/** Every way to know less: an answer gone, a member's answers, a particular, the day, the time before. */
function* lessOf(input: JudgeInput, keepsLast: boolean): Generator<readonly [string, JudgeInput]> {
  const { answers, particulars, previous, on, ...rest } = input;
  for (const name of Object.keys(answers))
    yield [name, { ...input, answers: without(answers, (one) => one === name) }];
  const members = Object.keys(answers).flatMap((name) => splitAnswerName(name).member ?? []);
  for (const member of new Set(members))
    yield [
      `@${member}`,
      { ...input, answers: without(answers, (one) => splitAnswerName(one).member === member) },
    ];
  for (const name of Object.keys(particulars))
    yield [name, { ...input, particulars: without(particulars, (one) => one === name) }];
  if (on !== undefined) {
    const known = previous === undefined ? {} : { previous };
    yield ["on", { ...rest, answers, particulars, ...known }];
  }
  if (previous === undefined || keepsLast) return;
  yield ["previous", { ...rest, answers, particulars, ...(on === undefined ? {} : { on }) }];
  for (const name of Object.keys(previous))
    yield [`previous ${name}`, { ...input, previous: without(previous, (one) => one === name) }];
}

/** What is a pass now and was none before. */
function newPasses(before: Judgement, now: Judgement): string[] {
  const passed = (entries: object, old: Readonly<Record<string, { verdict: unknown }>>) =>
    Object.entries(entries).flatMap(([name, { verdict }]) =>
      // Of a repeat whose number is no longer known every answer is shown: it was no member before.
      verdict === "pass" && old[name] !== undefined && old[name].verdict !== "pass" ? [name] : [],
    );
  return [
    ...(now.overall === "pass" && before.overall !== "pass" ? ["overall"] : []),
    ...passed(now.points, before.points),
    ...passed(now.scores, before.scores),
  ];
}

/** A checklist may say that without a time before nothing is compared. */
const isLenient = (doc: Checklist): boolean =>
  Object.values(doc.properties).some((point) =>
    point.limits?.some(({ sameAsLast }) => sameAsLast?.whenNone === "not-applied"),
  );

describe("whatever is taken away never turns anything into a pass", () => {
  const engine = createFormulaEngine();
  const docs: readonly (readonly [string, Checklist])[] = [
    ["every keyword", RICH],
    ...STARTERS.map(({ key, checklist }) => [key, checklist] as const),
  ];

  test.each(docs)(
    "%s",
    (_, doc) => {
      const judge = compileJudge(doc, engine);
      const keepsLast = isLenient(doc);
      const seen = new Set<unknown>();
      fc.assert(
        fc.property(sheetOf(doc), fc.nat(), (sheet, choice) => {
          const before = judge.judge(sheet, { explain: false });
          seen.add(before.overall);
          const ways = [...lessOf(sheet, keepsLast)];
          const way = ways[choice % ways.length];
          if (way === undefined) return;
          const now = judge.judge(way[1], { explain: false });
          expect([way[0], newPasses(before, now)]).toEqual([way[0], []]);
        }),
        RUNS,
      );
      // Otherwise nothing was shown of passes.
      expect([...seen]).toContain("fail");
    },
    60_000,
  );
});
