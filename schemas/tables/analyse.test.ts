import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { TableDefinition } from "../checklist/meta-schema.ts";
import type { Scalar } from "../formulas/engine-type.ts";
import type { Problem } from "../shared/problem.ts";
import { tableProblems } from "./analyse.ts";
import { cellTest } from "./look-up.ts";
import { liesIn, type SmallTable, smallTable } from "./testing/small-tables.ts";

const hitsOf = (table: TableDefinition, combination: readonly Scalar[]): readonly number[] =>
  table.rules.flatMap((rule, row) =>
    rule.when.every((cell, column) => cellTest(cell)(combination[column] ?? "")) ? [row] : [],
  );

const texts = (value: Problem["params"][string] | undefined): readonly string[] =>
  Array.isArray(value) ? value.map(String) : [];

/** The example as values: numbers and truths were printed. */
const exampleOf = ({ params }: Problem, { inputs }: SmallTable): readonly Scalar[] =>
  texts(params.inputs).map((text, column) => {
    const type = inputs[column]?.type;
    if (type === "number") return Number(text);
    return type === "boolean" ? text === "true" : text;
  });

const found = (small: SmallTable, code: string) =>
  tableProblems(small.table, small.inputs).filter((one) => one.code === code);

/** Where the regions told are not exactly the combinations that a condition holds for. */
const disagreements = (
  small: SmallTable,
  code: string,
  isFault: (hits: readonly number[]) => boolean,
): readonly (readonly Scalar[])[] => {
  const problems = found(small, code);
  const examples = problems.filter((one) => {
    const example = exampleOf(one, small);
    return !isFault(hitsOf(small.table, example)) || !liesIn(texts(one.params.where), example);
  });
  const isCut = found(small, "table-more-found").length > 0;
  const combinations = small.combinations.filter((combination) => {
    const told = problems.some((one) => liesIn(texts(one.params.where), combination));
    const fault = isFault(hitsOf(small.table, combination));
    return told !== fault && !(isCut && fault);
  });
  return [...examples.map((one) => exampleOf(one, small)), ...combinations];
};

const RUNS = { numRuns: 1000 };

describe("against trying every combination of a small table", () => {
  test("the holes told of a unique table are all there are, and every example is one", () => {
    fc.assert(
      fc.property(smallTable("unique"), (small) => {
        expect(disagreements(small, "table-hole", (hits) => hits.length === 0)).toEqual([]);
      }),
      RUNS,
    );
  });

  test("two rows of a unique table are told as overlapping exactly when some inputs fit both", () => {
    fc.assert(
      fc.property(smallTable("unique"), (small) => {
        const pairs = new Set<string>();
        for (const combination of small.combinations) {
          const hits = hitsOf(small.table, combination);
          for (const a of hits) for (const b of hits) if (a < b) pairs.add(`${a + 1},${b + 1}`);
        }
        const told = found(small, "table-overlap");
        expect(told.map(({ params }) => texts(params.rules).join()).sort()).toEqual(
          [...pairs].sort(),
        );
        for (const one of told) {
          const hits = hitsOf(small.table, exampleOf(one, small)).map((row) => String(row + 1));
          expect(hits).toEqual(expect.arrayContaining([...texts(one.params.rules)]));
        }
      }),
      RUNS,
    );
  });

  test("rows of an any table overlap only where they disagree", () => {
    fc.assert(
      fc.property(smallTable("any"), (small) => {
        const outcomes = (hits: readonly number[]) =>
          new Set(hits.map((row) => small.table.rules[row]?.then)).size;
        const wrong = disagreements(small, "table-overlap", (hits) => outcomes(hits) > 1);
        expect(wrong).toEqual([]);
      }),
      RUNS,
    );
  });

  test("a collecting table is told exactly where too few and too many rows fit", () => {
    const expected = fc.integer({ min: 1, max: 4 });
    const small = expected.chain((count) => smallTable("collect", count));
    fc.assert(
      fc.property(small, (one) => {
        const count = one.table.expect ?? 0;
        const few = disagreements(one, "table-too-few-hits", (hits) => hits.length < count);
        const many = disagreements(one, "table-too-many-hits", (hits) => hits.length > count);
        expect([...few, ...many]).toEqual([]);
      }),
      RUNS,
    );
  });

  test("a row of a first-match table is told as out of reach exactly when it never comes first", () => {
    fc.assert(
      fc.property(smallTable("first"), (small) => {
        const last = { any: true as const };
        const rules = [
          ...small.table.rules,
          { ...small.table.rules[0], when: small.inputs.map(() => last) },
        ] as TableDefinition["rules"];
        const whole = { ...small, table: { ...small.table, rules } };
        const first = new Set(small.combinations.map((one) => hitsOf(whole.table, one)[0]));
        const never = [...small.table.rules.keys()].filter((row) => !first.has(row));
        const told = found(whole, "table-row-unreachable").map(({ pointer }) => pointer);
        expect(told).toEqual(never.map((row) => `/rules/${row}`));
      }),
      RUNS,
    );
  });
});
