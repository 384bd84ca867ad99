import { printNumber, printUnit, Sentence, WordButton } from "@roundbook/runner/form";
import type { ValueDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { addValue, changeValue, removeValue, withAmount } from "../model/around-edit.ts";
import { valueWords } from "../model/fact-words.ts";
import { formulaWords } from "../model/formula-words.ts";
import { readBound } from "../model/limit-edit.ts";
import { AddBlank, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { FormulaEdit } from "./formula-edit.tsx";
import { UnitEdit } from "./unit-edit.tsx";

/** Named values that limits may count with: a constant, a formula, or a table that stands as it is. */
export const ValueSentences = () => {
  const { document, apply, setOpen } = useDesk();
  const values = Object.entries(document.values ?? {});
  return (
    <>
      {values.map(([name, value], at) => (
        <ValueSentence key={name} {...{ name, value }} first={at === 0} />
      ))}
      <AddBlank
        id="values/new"
        verb={values.length === 0 ? e("verb.counts") : undefined}
        before={values.length === 0 ? e("around.no-values") : undefined}
        word={e("around.add-value")}
        label={e("around.value-title")}
        onAdd={(title) => {
          const made = addValue(document, title);
          apply(made.document);
          queueMicrotask(() => setOpen(`values/${made.name}/formula`));
        }}
      />
    </>
  );
};

const ValueSentence = ({
  name,
  value,
  first,
}: {
  readonly name: string;
  readonly value: ValueDefinition;
  readonly first: boolean;
}) => {
  const { document, apply, setOpen } = useDesk();
  const id = (part: string) => `values/${name}/${part}`;
  const change = (next: (one: ValueDefinition) => ValueDefinition) =>
    apply(changeValue(document, name, next));
  const optional = (member: "title" | "basis", label: string) => (
    <TextEdit
      label={label}
      value={value[member] ?? ""}
      onTake={(text) => {
        change(({ [member]: _, ...rest }) =>
          text.trim() === "" ? rest : { ...rest, [member]: text.trim() },
        );
        return undefined;
      }}
    />
  );
  const opened = useOpened({
    [id("title")]: () => optional("title", e("around.value-title")),
    [id("basis")]: () => optional("basis", e("l.basis")),
    [id("unit")]: () => (
      <UnitEdit
        value={value.unit}
        onTake={(to) => change(({ unit: _, ...rest }) => (to ? { ...rest, unit: to } : rest))}
      />
    ),
    [id("formula")]: () => (
      <FormulaEdit
        label={e("around.amount")}
        value={String(value.const ?? value.formula ?? "")}
        wanted={{ unit: value.unit }}
        onTake={(text) => {
          const amount = readBound(text);
          if (amount === undefined) return e("l.needed");
          change((one) => withAmount(one, amount));
          return undefined;
        }}
      />
    ),
  });
  return (
    <Sentence
      verb={first ? e("verb.counts") : undefined}
      opened={
        opened && (
          <>
            {opened}
            <p className="second">
              {e("around.known-as")} <span className="mono">{name}</span>.{" "}
              <WordButton
                quiet
                onClick={() => {
                  setOpen(null);
                  apply(removeValue(document, name));
                }}
              >
                {e("ed.remove")}
              </WordButton>
            </p>
          </>
        )
      }
    >
      <OpenBlank id={id("title")}>{value.title ?? name}</OpenBlank> {e("s.is")}{" "}
      {value.table ? (
        valueWords(document, value)
      ) : (
        <>
          <OpenBlank id={id("formula")}>
            {value.const === undefined
              ? formulaWords(document, value.formula ?? "")
              : printNumber(value.const)}
          </OpenBlank>{" "}
          <OpenBlank id={id("unit")}>
            {value.unit ? printUnit(value.unit) : e("around.no-unit")}
          </OpenBlank>
        </>
      )}
      {`, ${e("s.because")} `}
      <OpenBlank id={id("basis")} label={value.basis ? undefined : e("l.basis-open")}>
        {value.basis ?? e("s.no-basis")}
      </OpenBlank>
      {value.table && <span className="second"> {e("around.table-note")}</span>}
    </Sentence>
  );
};
