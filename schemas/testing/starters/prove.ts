import { describe, expect, test } from "vitest";
import { issueDocument } from "../../checklist/issue-document.ts";
import { lintChecklist } from "../../checklist/lint-checklist.ts";
import { createFormulaEngine } from "../../formulas/index.ts";
import { compileJudge } from "../../judge/compile-judge.ts";
import type { LimitJudgement } from "../../judge/judgement.ts";
import { createPatternEngine } from "../../patterns/index.ts";
import { roundSignificant } from "../../shared/significant.ts";
import { EXAMPLE_CAUTION } from "../../starters/starter.ts";
import { convert } from "../../units/units.ts";
import { compileAnswers, parseChecklist } from "../../validate/index.ts";
import { PUBLISHED } from "../published/index.ts";
import { numbersOf } from "./numbers-of.ts";
import type { StarterCase } from "./starter-case.ts";

const engine = createFormulaEngine();
const patterns = createPatternEngine();
const without = <T>(record: Readonly<Record<string, T>>, name: string) =>
  Object.fromEntries(Object.entries(record).filter(([key]) => key !== name));

/** Remembers how each limit was met: within, outside and, for a number or a day, exactly on it. */
class Exercised {
  readonly #seen = new Map<string, Set<string>>();

  add(point: string, limits: readonly LimitJudgement[]): void {
    for (const { index, kind, verdict, why } of limits) {
      const name = `${point.split("@")[0]} limit ${index} ${kind}`;
      const seen = this.#seen.get(name) ?? new Set();
      if (verdict === "pass") seen.add("within");
      else if (verdict !== "undecided") seen.add("outside");
      if (why.params.by === 0 || kind === "accept") seen.add("on");
      const dated = kind === "notBefore" || kind === "notAfter";
      if (dated && why.params.value === why.params.bound) seen.add("on");
      this.#seen.set(name, seen);
    }
  }

  has(name: string, how: string): boolean {
    return this.#seen.get(name)?.has(how) ?? false;
  }
}

/** Everything a starter has to be, on the sheets and steps that its test gives. */
export const proveStarter = ({ starter, sheets, steps, numbers }: StarterCase): void => {
  const { checklist: doc } = starter;
  const judge = compileJudge(doc, engine);
  const faultsOf = compileAnswers(doc);
  const exercised = new Exercised();

  describe(`${starter.title}`, () => {
    test("parses, has no error and no warning with or without formulas, and issues", () => {
      expect(parseChecklist(doc)).toMatchObject({ ok: true });
      expect(lintChecklist(doc, engine, patterns)).toEqual([]);
      expect(lintChecklist(doc)).toEqual([]);
      const issued = issueDocument(doc);
      expect(parseChecklist(issued)).toMatchObject({ ok: true });
      expect(lintChecklist(issued, engine, patterns)).toEqual([]);
      expect(issueDocument(issued)).toEqual(issued);
    });

    test("says first that it is an example, how long it takes, and what every limit rests on", () => {
      expect(doc.cautions?.[0]).toBe(EXAMPLE_CAUTION);
      expect(doc.cautions?.length).toBeGreaterThan(1);
      expect(doc.minutes).toBeGreaterThan(0);
      const bare = Object.values(doc.properties).flatMap(({ limits = [] }) =>
        limits.filter(({ basis }) => basis === undefined),
      );
      expect(bare).toEqual([]);
      expect(starter.interval.basis).not.toBe("");
      expect(Object.keys(doc.particulars ?? {})).toEqual(
        Object.keys(starter.assetType.particulars),
      );
    });

    test.each(Object.entries(sheets))("a filled-in sheet passes: %s", (_, sheet) => {
      expect(faultsOf(sheet.answers)).toEqual([]);
      const judged = judge.judge(sheet);
      expect(judged.problems).toEqual([]);
      expect([judged.overall, judged.complete]).toEqual(["pass", true]);
      for (const [name, { limits }] of Object.entries(judged.points)) exercised.add(name, limits);
    });

    test.each(Object.entries(sheets))("an empty sheet never passes: %s", (_, sheet) => {
      for (const particulars of [sheet.particulars, {}]) {
        const judged = judge.judge({ ...sheet, particulars, answers: {} });
        expect(judged.overall).not.toBe("pass");
        expect(judged.complete).toBe(false);
      }
    });

    test.each(Object.entries(sheets))("what is left out never stays a pass: %s", (_, sheet) => {
      for (const name of Object.keys(sheet.answers)) {
        const limits = doc.properties[name.split("@")[0] ?? ""]?.limits;
        const judged = judge.judge({ ...sheet, answers: without(sheet.answers, name) });
        if (limits === undefined) expect(judged.points[name]?.verdict ?? null).not.toBe("pass");
        else expect([name, judged.overall]).not.toEqual([name, "pass"]);
      }
    });

    test.each(
      steps.flatMap(({ sheet, point, judged = point, tries }) =>
        tries.map(([answer, verdict]) => [
          point,
          JSON.stringify(answer),
          judged,
          verdict,
          sheet,
          answer,
        ]),
      ) as [string, string, string, string, string, never][],
    )("%s %s: %s %s (%s)", (point, _, meant, verdict, name, answer) => {
      const sheet = sheets[name];
      if (sheet === undefined) throw new RangeError(`no sheet ${name}`);
      const answers = { ...sheet.answers, [point]: answer };
      expect(faultsOf(answers)).toEqual([]);
      const judged = judge.judge({ ...sheet, answers });
      expect(judged.points[meant]?.verdict).toBe(verdict);
      if (verdict === "fail") expect(judged.overall).toBe("fail");
      exercised.add(meant, judged.points[meant]?.limits ?? []);
    });

    test("every limit was met from within, exactly and from outside", () => {
      const missed = Object.entries(doc.properties).flatMap(([point, { limits = [] }]) =>
        limits.flatMap((limit, index) =>
          (
            [
              "min",
              "max",
              "exclusiveMin",
              "exclusiveMax",
              "accept",
              "notBefore",
              "notAfter",
            ] as const
          ).flatMap((kind) => {
            const name = `${point} limit ${index} ${kind}`;
            if (limit[kind] === undefined) return [];
            const lacking = ["within", "on", "outside"].filter((how) => !exercised.has(name, how));
            return lacking.map((how) => `${name}: ${how}`);
          }),
        ),
      );
      expect(missed).toEqual([]);
    });

    test("every number is published, or marked as practice or from memory", () => {
      const placed = numbersOf(doc);
      expect([...new Set(placed.map(({ pointer }) => pointer))].sort()).toEqual(
        Object.keys(numbers).sort(),
      );
      for (const { pointer, number, unit } of placed) {
        const origin = numbers[pointer];
        if (origin === undefined || !("id" in origin)) continue;
        expect(PUBLISHED.find(({ id }) => id === origin.id)?.used).toBe("engine");
        const says =
          origin.unit === undefined || unit === undefined
            ? origin.says
            : convert(origin.says, origin.unit, unit);
        expect([pointer, roundSignificant(says ?? Number.NaN)]).toEqual([
          pointer,
          roundSignificant(number),
        ]);
      }
    });
  });
};
