import { durationWords, useMessages, WordButton, WordList } from "@roundbook/runner/form";
import type { RuleOf } from "@roundbook/schemas";
import { Fragment } from "react";
import { ChoiceEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import {
  addFactor,
  addRow,
  changeRow,
  factorsOf,
  possibleFactors,
  readOrder,
  removeFactor,
  removeRow,
  setFactor,
  setWorse,
  valuesOf,
  valueWords,
  type Worse,
} from "../model/interval-risk.ts";
import { useInterval, useParticulars, useRule } from "./interval-desk.tsx";
import { LengthEdit, Line } from "./line.tsx";
import { CellEdit, RiskGrid } from "./risk-grid.tsx";

type Rule = RuleOf<"by-risk">;

/** The table of an interval by risk, and the order of its factors from mild to worst. */
export const RiskSentence = ({ rule }: { readonly rule: Rule }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  const { draft } = useInterval();
  const particulars = useParticulars();
  const take = ({ table, worse }: Rule) => change({ table, worse });
  const factors = factorsOf(rule);
  const free = possibleFactors(particulars).filter((name) => !factors.includes(name));
  const titleOf = (name: string) => particulars[name]?.title ?? name;
  const choices = (names: readonly string[]) =>
    names.map((value) => ({ value, label: titleOf(value) }));
  const columnEditors = factors.flatMap((name, column) => [
    [
      `factor/${column}`,
      () =>
        free.length === 0 && name === "" ? (
          <p className="second">{iv("no-factors")}</p>
        ) : (
          <>
            <ChoiceEdit
              label={iv("risk.column")}
              choices={choices([...(name ? [name] : []), ...free])}
              chosen={name}
              onChoose={(next) => take(setFactor(rule, column, next, particulars))}
            />
            {factors.length > 1 && (
              <WordButton quiet onClick={() => take(removeFactor(rule, column))}>
                {iv("risk.remove-factor")}
              </WordButton>
            )}
          </>
        ),
    ],
    [`worse/${name}`, () => <WorseEdit rule={rule} name={name} onTake={take} />],
  ]);
  const rowEditors = rule.table.rules.flatMap((row, at) => [
    ...factors.map((_, column) => [
      `cell/${at}/${column}`,
      () => <CellEdit rule={rule} at={at} column={column} onTake={take} />,
    ]),
    [
      `then/${at}`,
      () => (
        <>
          <LengthEdit
            label={iv("risk.outcome", { number: at + 1 })}
            value={String(row.then)}
            onTake={(then) => take(changeRow(rule, at, (one) => ({ ...one, then })))}
          />
          {rule.table.rules.length > 1 && (
            <WordButton quiet onClick={() => take(removeRow(rule, at))}>
              {iv("risk.remove", { number: at + 1 })}
            </WordButton>
          )}
        </>
      ),
    ],
    [
      `basis/${at}`,
      () => (
        <TextEdit
          label={iv("risk.basis", { number: at + 1 })}
          value={row.basis ?? ""}
          onTake={(text) => {
            take(
              changeRow(rule, at, ({ basis: _, ...rest }) =>
                text.trim() === "" ? rest : { ...rest, basis: text.trim() },
              ),
            );
            return undefined;
          }}
        />
      ),
    ],
  ]);
  const editors = Object.fromEntries([
    ...columnEditors,
    ...rowEditors,
    [
      "add-factor",
      () => (
        <ChoiceEdit
          label={iv("risk.column")}
          choices={choices(free)}
          chosen={null}
          onChoose={(name) => take(addFactor(rule, name, particulars))}
        />
      ),
    ],
  ]);
  return (
    <Line name="every" verb={iv("verb.by")} editors={editors}>
      <RiskGrid rule={rule} titleOf={titleOf} say={(iso) => durationWords(t, iso)} />
      <WordList>
        <WordButton quiet onClick={() => take(addRow(rule))}>
          {iv("risk.add")}
        </WordButton>
        {free.length > 0 && factors.length < 4 && (
          <OpenBlank id="add-factor">{iv("risk.add-factor")}</OpenBlank>
        )}
      </WordList>
      {factors
        .filter((name) => name !== "" && draft.assetType !== "")
        .map((name) => (
          <Fragment key={name}>
            <span className="line-more">
              {`${iv("risk.mild", { title: titleOf(name) })} `}
              <OpenBlank id={`worse/${name}`}>{worseWords(rule.worse[name] ?? "up")}</OpenBlank>
            </span>
          </Fragment>
        ))}
      <span className="line-more second">{iv("risk.note")}</span>
    </Line>
  );
};

const worseWords = (worse: Worse): string =>
  typeof worse === "string"
    ? iv(`risk.${worse}`)
    : iv("risk.order-words", { values: worse.map(valueWords).join(", ") });

/** Which way a factor worsens. */
const WorseEdit = ({
  rule,
  name,
  onTake,
}: {
  readonly rule: Rule;
  readonly name: string;
  readonly onTake: (rule: Rule) => void;
}) => {
  const definition = useParticulars()[name];
  const worse = rule.worse[name];
  const title = definition?.title ?? name;
  const values = definition ? valuesOf(definition) : null;
  if (!values) {
    return (
      <ChoiceEdit
        label={title}
        choices={(["up", "down"] as const).map((value) => ({ value, label: iv(`risk.${value}`) }))}
        chosen={typeof worse === "string" ? worse : null}
        onChoose={(next) => onTake(setWorse(rule, name, next))}
      />
    );
  }
  const order = Array.isArray(worse) ? worse : values;
  return (
    <TextEdit
      label={iv("risk.order", { title })}
      value={order.map(valueWords).join(", ")}
      onTake={(text) => {
        const read = readOrder(text, values);
        if (read === undefined) return iv("w.order", { values: values.map(valueWords).join(", ") });
        onTake(setWorse(rule, name, read));
        return undefined;
      }}
    />
  );
};
