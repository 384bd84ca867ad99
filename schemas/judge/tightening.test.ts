import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { splitAnswerName } from "../checklist/answer-name.ts";
import type { Checklist, LimitDefinition } from "../checklist/meta-schema.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { STARTERS } from "../starters/index.ts";
import { compileJudge } from "./compile-judge.ts";
import type { OverallVerdict, PointVerdict } from "./judgement.ts";
import { GRAVITY } from "./tally.ts";
import { RICH } from "./testing/rich-checklist.ts";
import { sheetOf } from "./testing/sheets.ts";

const RUNS = { seed: 20_260_302, numRuns: 1000 };
const STEPS = [0.1, 1, 30];

const gravity = (verdict: PointVerdict | OverallVerdict): number =>
  verdict === null || verdict === "not-counted" || verdict === "not-evaluated"
    ? -1
    : GRAVITY[verdict];

/** The limit made narrower by each of its plain numbers in turn. */
function* narrower(limit: LimitDefinition, step: number): Generator<LimitDefinition> {
  for (const kind of ["min", "exclusiveMin"] as const)
    if (typeof limit[kind] === "number") yield { ...limit, [kind]: limit[kind] + step };
  for (const kind of ["max", "exclusiveMax"] as const)
    if (typeof limit[kind] === "number") yield { ...limit, [kind]: limit[kind] - step };
  const { accept, sameAsLast, decision } = limit;
  if (accept !== undefined)
    yield { ...limit, accept: accept.length > 1 ? accept.slice(1) : ["never chosen"] };
  if (typeof sameAsLast?.within === "number")
    yield { ...limit, sameAsLast: { ...sameAsLast, within: sameAsLast.within - step } };
  if (decision?.rule === "guarded-acceptance" && typeof decision.uncertainty === "number")
    yield { ...limit, decision: { ...decision, uncertainty: decision.uncertainty + step } };
}

interface Tightened {
  readonly point: string;
  readonly severity: "fail" | "advisory";
  readonly doc: Checklist;
}

function* tightened(doc: Checklist): Generator<Tightened> {
  for (const [point, definition] of Object.entries(doc.properties))
    for (const [index, limit] of (definition.limits ?? []).entries())
      for (const step of STEPS)
        for (const narrow of narrower(limit, step)) {
          const limits = definition.limits?.toSpliced(index, 1, narrow) ?? [];
          const properties = { ...doc.properties, [point]: { ...definition, limits } };
          yield { point, severity: limit.severity ?? "fail", doc: { ...doc, properties } };
        }
}

describe("a narrower limit never makes a verdict better", () => {
  const engine = createFormulaEngine();
  const docs: readonly (readonly [string, Checklist])[] = [
    ["every keyword", RICH],
    ...STARTERS.map(({ key, checklist }) => [key, checklist] as const),
  ];

  test.each(docs)(
    "%s",
    (_, doc) => {
      const loose = compileJudge(doc, engine);
      const all = [...tightened(doc)].map((one) => ({
        ...one,
        judge: compileJudge(one.doc, engine),
      }));
      const stopsOnFail = (doc.stops ?? []).every(({ on }) => !on.includes("advisory"));
      let moved = 0;
      fc.assert(
        fc.property(sheetOf(doc), fc.nat({ max: all.length - 1 }), (sheet, choice) => {
          const { judge, point, severity } = all[choice] ?? {
            judge: loose,
            point: "",
            severity: "fail",
          };
          const before = loose.judge(sheet, { explain: false });
          const now = judge.judge(sheet, { explain: false });
          if (now.overall === "pass") expect(before.overall).toBe("pass");
          for (const [name, { verdict }] of Object.entries(now.points)) {
            const old = before.points[name]?.verdict ?? null;
            if (splitAnswerName(name).point !== point) continue;
            if (verdict !== old) moved += 1;
            if (verdict === "pass") expect([name, old]).toEqual([name, "pass"]);
            // Of an advisory limit a violation weighs less than not knowing.
            if (severity === "fail") expect(gravity(verdict)).toBeGreaterThanOrEqual(gravity(old));
          }
          // A stop on an advisory may leave out what failed: its source is graver all the same.
          if (severity === "fail" && stopsOnFail)
            expect(gravity(now.overall)).toBeGreaterThanOrEqual(gravity(before.overall));
        }),
        RUNS,
      );
      expect(moved).toBeGreaterThan(0);
    },
    60_000,
  );
});
