import type { RuleOf } from "@roundbook/schemas";
import { ManyEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import {
  type Cell,
  cellOf,
  cellWords,
  chosenIn,
  factorsOf,
  readRange,
  setCell,
  valuesOf,
  valueWords,
} from "../model/interval-risk.ts";
import { useParticulars } from "./interval-desk.tsx";

type Rule = RuleOf<"by-risk">;

/** Rules down, factors across: each cell is a blank, its editor opens under the table. */
export const RiskGrid = ({
  rule,
  titleOf,
  say,
}: {
  readonly rule: Rule;
  readonly titleOf: (name: string) => string;
  readonly say: (iso: string) => string;
}) => {
  const factors = factorsOf(rule);
  const title = (column: number) => titleOf(factors[column] ?? "");
  return (
    <table className="risk-grid">
      <thead>
        <tr>
          <th aria-label={iv("risk.rule", { number: "" })} />
          {factors.map((name, column) => (
            <th key={name} scope="col">
              <OpenBlank id={`factor/${column}`}>
                {name === "" ? iv("risk.no-factor") : titleOf(name)}
              </OpenBlank>
            </th>
          ))}
          <th scope="col">{iv("risk.every")}</th>
          <th scope="col">{iv("risk.because")}</th>
        </tr>
      </thead>
      <tbody>
        {rule.table.rules.map((row, at) => (
          // Rules have no name: the place in the table is what they are called by.
          <tr key={at}>
            <th scope="row">{at + 1}</th>
            {row.when.map((cell, column) => (
              <td key={factors[column]} data-head={title(column)}>
                <OpenBlank id={`cell/${at}/${column}`}>{cellWords(cell)}</OpenBlank>
              </td>
            ))}
            <td data-head={iv("risk.every")}>
              <OpenBlank id={`then/${at}`}>{say(String(row.then))}</OpenBlank>
            </td>
            <td data-head={iv("risk.because")}>
              <OpenBlank
                id={`basis/${at}`}
                label={row.basis ? undefined : iv("risk.basis", { number: at + 1 })}
              >
                {row.basis ?? iv("s.basis-none")}
              </OpenBlank>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

/** What a rule asks of one factor: some of its values, or a range. */
export const CellEdit = ({
  rule,
  at,
  column,
  onTake,
}: {
  readonly rule: Rule;
  readonly at: number;
  readonly column: number;
  readonly onTake: (rule: Rule) => void;
}) => {
  const name = factorsOf(rule)[column] ?? "";
  const definition = useParticulars()[name];
  const cell = rule.table.rules[at]?.when[column] as Cell;
  const label = iv("risk.cell", { title: definition?.title ?? name, number: at + 1 });
  const values = definition ? valuesOf(definition) : null;
  if (values) {
    const chosen = chosenIn(cell) ?? values;
    return (
      <ManyEdit
        label={label}
        choices={values.map((value) => ({ value: valueWords(value), label: valueWords(value) }))}
        chosen={chosen.map(valueWords)}
        onChange={(words) => {
          const next = values.filter((value) => words.includes(valueWords(value)));
          onTake(setCell(rule, at, column, cellOf(next, values)));
        }}
      />
    );
  }
  return (
    <TextEdit
      label={label}
      value={cellWords(cell)}
      onTake={(text) => {
        const read = readRange(text);
        if (read === undefined) return iv("w.range");
        onTake(setCell(rule, at, column, read));
        return undefined;
      }}
    />
  );
};
