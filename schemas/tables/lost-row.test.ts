import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { TableDefinition } from "../checklist/meta-schema.ts";
import type { Scalar } from "../formulas/engine-type.ts";
import { judgeOf, reading } from "../judge/testing/checklists.ts";
import { LINT_CODES } from "../shared/codes/lint-codes.ts";
import { tableProblems } from "./analyse.ts";
import { isLookUpFailure, lookUp } from "./look-up.ts";
import { type SmallTable, smallTable } from "./testing/small-tables.ts";

/** Tables that may be issued: nothing that stands in the way was found in them. */
const issuable = (policy: TableDefinition["policy"], expected?: number) =>
  smallTable(policy, expected).filter(
    ({ table, inputs }) =>
      !tableProblems(table, inputs).some(({ code }) => LINT_CODES[code]?.level === "error"),
  );

const tables = fc.oneof(
  issuable("unique"),
  issuable("any"),
  issuable("collect", 1),
  issuable("collect", 2),
);

const lessRow = ({ table }: SmallTable, row: number): TableDefinition => ({
  ...table,
  rules: table.rules.filter((_, index) => index !== row % table.rules.length),
});

/** A reading of 2 against a greatest or a least value from the table. */
const verdictBy = (
  table: TableDefinition,
  given: readonly Scalar[],
  bound: "max" | "min",
  severity: "fail" | "advisory",
) => {
  const particulars = Object.fromEntries(
    given.map((value, index) => {
      const type = typeof value === "string" ? "string" : typeof value;
      return [`x${index}`, { title: "Input", type: type as "number" | "string" | "boolean" }];
    }),
  );
  const judge = judgeOf({
    particulars,
    values: { limit: { unit: "mm", table } },
    properties: { gap: reading("mm", [{ [bound]: "limit", severity, basis: "Test" }]) },
  });
  const known = Object.fromEntries(given.map((value, index) => [`x${index}`, value]));
  const judged = judge.judge({ particulars: known, answers: { gap: { value: 2, unit: "mm" } } });
  return [judged.points.gap?.verdict, judged.overall];
};

describe("a row lost from a unique, any or collecting table without errors", () => {
  test("leaves every look-up as it was or makes it a failure", () => {
    fc.assert(
      fc.property(tables, fc.nat(), (small, row) => {
        for (const combination of small.combinations) {
          const after = lookUp(lessRow(small, row), combination);
          if (isLookUpFailure(after)) continue;
          const before = lookUp(small.table, combination);
          expect(before).toHaveProperty("value", after.value);
        }
        expect(small.combinations.length).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });

  test("never turns a verdict into a pass", () => {
    const bounds = fc.constantFrom("max", "min" as const);
    const severities = fc.constantFrom("fail", "advisory" as const);
    const all = fc.tuple(tables, fc.nat(), fc.nat(), bounds, severities);
    let passes = 0;
    fc.assert(
      fc.property(all, ([small, row, which, bound, severity]) => {
        const given = small.combinations[which % small.combinations.length] ?? [];
        const before = verdictBy(small.table, given, bound, severity);
        const after = verdictBy(lessRow(small, row), given, bound, severity);
        const gained = after.filter((one, place) => one === "pass" && before[place] !== "pass");
        passes += after.filter((one) => one === "pass").length;
        expect(gained).toEqual([]);
      }),
      { numRuns: 2000 },
    );
    expect(passes).toBeGreaterThan(200);
  });

  test("a collecting table fails wherever the lost row had hit", () => {
    fc.assert(
      fc.property(issuable("collect", 2), fc.nat(), (small, row) => {
        const lost = {
          ...small.table,
          rules: small.table.rules.filter((_, index) => index === row % small.table.rules.length),
        };
        for (const combination of small.combinations) {
          if (isLookUpFailure(lookUp({ ...lost, expect: 1 }, combination))) continue;
          expect(lookUp(lessRow(small, row), combination)).toMatchObject({
            code: "hits-not-as-declared",
          });
        }
        expect(lost.rules).toHaveLength(1);
      }),
      { numRuns: 1000 },
    );
  });
});
