import { Button, LineField, printUnit, useMessages, WordButton } from "@roundbook/runner/form";
import { checklistNames } from "@roundbook/schemas";
import { useEffect, useMemo, useRef, useState } from "react";
import { e } from "../messages/editor.ts";
import { type Checked, checkFormula, mended, type Wanted } from "../model/formula-check.ts";
import { formulaWords, nameWords, unitSum } from "../model/formula-words.ts";
import { useDesk } from "./desk.tsx";
import { useLeave } from "./use-leave.ts";

/** A number, a name or a formula: checked while it is typed, what is wrong shown in its place. */
export const FormulaEdit = ({
  label,
  value,
  wanted,
  onTake,
}: {
  readonly label: string;
  readonly value: string;
  readonly wanted: Wanted;
  /** Gives back what is wrong with the text, or nothing when it was taken over. */
  readonly onTake: (text: string) => string | undefined;
}) => {
  const { whole: document, engine, needEngine, setOpen } = useDesk();
  const [text, setText] = useState(value);
  const [error, setError] = useState<string>();
  const field = useRef<HTMLInputElement>(null);
  useEffect(needEngine, [needEngine]);
  const names = useMemo(() => checklistNames(document, engine).types, [document, engine]);
  // A bound is a number: what is none cannot be counted with.
  const offered = [...names]
    .filter(([, { type }]) => "condition" in wanted || type === "number")
    .map(([name]) => name)
    .sort();
  const checked = checkFormula(text, names, wanted, engine);
  const take = (): boolean => {
    // A formula that does not stand yet is kept too: the footnotes say what is wrong with it.
    const wrong = text === value ? undefined : onTake(text);
    setError(wrong);
    return wrong === undefined;
  };
  const close = () => take() && setOpen(null);
  const leave = useLeave(take);
  const mend = (right: string) => {
    setText(right);
    setError(onTake(right));
  };
  const insert = (name: string) => {
    const at = field.current?.selectionStart ?? text.length;
    setText(text.slice(0, at) + name + text.slice(field.current?.selectionEnd ?? at));
    field.current?.focus();
  };
  return (
    <div className="blank-edit mono-edit">
      <LineField
        ref={field}
        label={label}
        error={error}
        value={text}
        autoFocus
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        trail={"unit" in wanted && wanted.unit ? printUnit(wanted.unit) : undefined}
        onBlur={leave}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === "Enter") close();
          if (event.key === "Escape") setOpen(null);
        }}
      />
      <FormulaSays text={text} checked={checked} onMend={mend} />
      {offered.length > 0 && (
        <p className="names-at-hand">
          <span className="second">{e("f.names")}</span>
          {offered.map((name) => (
            <WordButton
              key={name}
              quiet
              title={nameWords(document, name)}
              onClick={() => insert(name)}
            >
              {name}
            </WordButton>
          ))}
        </p>
      )}
      <Button kind="secondary" onClick={close}>
        {e("ed.done")}
      </Button>
    </div>
  );
};

const FormulaSays = ({
  text,
  checked,
  onMend,
}: {
  readonly text: string;
  readonly checked: Checked;
  readonly onMend: (text: string) => void;
}) => {
  const { whole: document, engine } = useDesk();
  const { say } = useMessages();
  const names = useMemo(() => checklistNames(document, engine).types, [document, engine]);
  if (checked.state === "wrong") {
    return (
      <div aria-live="polite">
        <p className="formula-echo mono" aria-hidden="true">
          {text.slice(0, checked.start)}
          <span className="formula-wrong">{text.slice(checked.start, checked.end) || " "}</span>
          {text.slice(checked.end)}
        </p>
        <p className="danger">
          <span aria-hidden="true">↑ </span>
          {e("f.at", { place: checked.start + 1 })} {say(checked.problem)}
          {checked.nearest !== null && (
            <>
              {" "}
              <WordButton onClick={() => onMend(mended(text, checked))}>{e("f.use")}</WordButton>
            </>
          )}
        </p>
      </div>
    );
  }
  if (checked.state !== "sound") return null;
  const sum = unitSum(text, (name) => names.get(name)?.unit?.code);
  return (
    <p className="second" aria-live="polite">
      {sum !== null && checked.unit !== null && (
        <strong>{e("f.sum", { sum, unit: printUnit(checked.unit) || "1" })} </strong>
      )}
      {e("f.reads", { words: formulaWords(document, text) })}
    </p>
  );
};
