import { expect, it } from "vitest";
import { createFormulaEngine } from "../../formulas/index.ts";
import { LINT_CODES } from "../../shared/codes/lint-codes.ts";
import { EXTENSION_LEAD } from "../../testing/extension-lead.ts";
import { rule } from "../../testing/rule.ts";
import { parseChecklist } from "../../validate/index.ts";
import type { Checklist, TableDefinition } from "../meta-schema.ts";
import { checklistNames } from "../names.ts";
import { lintTables } from "./tables.ts";

const withTable = (table: TableDefinition): Checklist => ({
  ...EXTENSION_LEAD,
  particulars: {
    ...EXTENSION_LEAD.particulars,
    sockets: { title: "Sockets", type: "integer", minimum: 1, maximum: 8 },
  },
  properties: {
    ...EXTENSION_LEAD.properties,
    finish: { title: "Finish", $ref: "#/$defs/graded", minimum: 1, maximum: 5 },
  },
  values: { ...EXTENSION_LEAD.values, limit: { table } },
});

const lint = (table: TableDefinition) => {
  const doc = withTable(table);
  return lintTables(doc, checklistNames(doc, createFormulaEngine()));
};

const unique = (input: string, rules: TableDefinition["rules"]): TableDefinition => ({
  policy: "unique",
  inputs: [input],
  rules,
});

it.each([
  ["a whole number of the asset", "asset.sockets", [{ max: 3 }, { min: 5 }], ["4"]],
  ["a grade within its range", "answers.finish", [{ max: 3 }], ["4"]],
  ["a choice of the asset", "asset.class", ["I"], ["II"]],
  ["a check", "answers.cable", ["ok"], ["not-ok"]],
  ["the length within its range", " asset.length ", [{ max: 50 }], ["80"]],
  ["a condition", "asset.length > 50.0", [true], ["false"]],
  ["a formula without a range", "asset.length * 2.0", [{ min: 0 }], ["-1"]],
] as const)("a hole lies within what its input can be: %s", (_, input, cells, inputs) => {
  const rules = cells.map((cell, index) =>
    rule([cell as TableDefinition["rules"][0]["when"][0]], index),
  );
  expect(lint(unique(input, rules))).toMatchObject([
    { pointer: "/values/limit/table", code: "table-hole", params: { inputs } },
  ]);
});

it("a collecting table passes the meta-schema and is told where its rows are too few or too many", () => {
  const any = { any: true } as const;
  const collecting: TableDefinition = {
    policy: "collect",
    aggregate: "min",
    expect: 2,
    inputs: ["asset.sockets", "asset.class"],
    rules: [rule([any, any], 5), rule([{ max: 4 }, any], 3), rule([{ min: 4 }, "I"], 4)],
  };
  expect(parseChecklist(withTable(collecting))).toMatchObject({ ok: true });
  expect(lint(collecting)).toEqual([
    {
      pointer: "/values/limit/table",
      code: "table-too-few-hits",
      params: {
        expected: 2,
        where: ["4 < asset.sockets ≤ 8", "asset.class = II"],
        inputs: ["6", "II"],
      },
    },
    {
      pointer: "/values/limit/table",
      code: "table-too-many-hits",
      params: {
        expected: 2,
        where: ["asset.sockets = 4", "asset.class = I"],
        inputs: ["4", "I"],
      },
    },
  ]);
  expect(parseChecklist(withTable({ ...collecting, expect: 0 }))).toMatchObject({
    ok: false,
    problems: [{ pointer: "/values/limit/table/expect", code: "too-small" }],
  });
});

it("every problem of a table has a code with its parameters", () => {
  const found = [
    ...lint(
      unique("asset.sockets", [rule([{ max: 4 }], 1), rule([{ min: 4, max: 5 }], 2), rule([0], 3)]),
    ),
    ...lint({ ...unique("asset.sockets", [rule([{ any: true }], "a")]), aggregate: "max" }),
    ...lint({ policy: "collect", inputs: ["asset.sockets"], rules: [rule([1], "a")] }),
    ...lint(unique("asset.sockets", [rule([{ any: true, min: 3 }], 1)])),
  ];
  expect(found.map(({ code }) => code)).toEqual([
    "table-hole",
    "table-overlap",
    "table-row-unreachable",
    "table-policy-without",
    "table-policy-needs",
    "table-policy-needs",
    "table-collects-words",
    "table-cell-any-and-more",
  ]);
  for (const { code, params } of found)
    expect([code, ...Object.keys(params).sort()]).toEqual([
      code,
      ...[...(LINT_CODES[code]?.params ?? [])].sort(),
    ]);
});
