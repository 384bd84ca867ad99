import {
  Blank,
  Button,
  LineField,
  printQuantity,
  printUnit,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import {
  type ParticularDefinition,
  type Particulars,
  particularsInOrder,
} from "@roundbook/schemas";
import { type FormEvent, Fragment, useState } from "react";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { particularKind } from "../model/around-edit.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { readNumber } from "../model/read-number.ts";

type Value = Particulars[string];

const valueWords = (definition: ParticularDefinition, value: Value | undefined): string => {
  const { title, unit } = definition;
  if (value === undefined) return e("trial.unknown", { title: title.toLowerCase() });
  if (typeof value === "number") return unit ? printQuantity(value, unit) : `${title} ${value}`;
  if (typeof value === "boolean") return `${title}: ${e(value ? "trial.yes" : "trial.no")}`;
  return `${title} ${value}`;
};

/** What the trial's asset is like, as one sentence whose blanks open in place. */
export const TrialParticulars = ({
  document,
  particulars,
  onWrite,
}: {
  readonly document: DraftDocument;
  readonly particulars: Particulars;
  /** An empty text takes the particular away. */
  readonly onWrite: (name: string, value: Value) => void;
}) => {
  const [open, setOpen] = useState<string | null>(null);
  const definitions = particularsInOrder(document.particulars ?? {});
  const opened = definitions.find(([name]) => name === open);
  const write = (name: string, value: Value) => {
    onWrite(name, value);
    setOpen(null);
  };
  return (
    <div className="trial-particulars second">
      <p>
        {definitions.length === 0 ? e("trial.nothing") : `${e("trial.filled")} `}
        {definitions.map(([name, definition], at) => (
          <Fragment key={name}>
            {at > 0 && ", "}
            <Blank expanded={open === name} onPress={() => setOpen(open === name ? null : name)}>
              {valueWords(definition, particulars[name])}
            </Blank>
          </Fragment>
        ))}
        {definitions.length > 0 && "."} {d("trial.aside")}
      </p>
      {opened && (
        <ValueEdit
          key={opened[0]}
          definition={opened[1]}
          value={particulars[opened[0]]}
          onTake={(value) => write(opened[0], value)}
        />
      )}
    </div>
  );
};

const ValueEdit = ({
  definition,
  value,
  onTake,
}: {
  readonly definition: ParticularDefinition;
  readonly value: Value | undefined;
  readonly onTake: (value: Value) => void;
}) => {
  const [text, setText] = useState(value === undefined ? "" : String(value));
  const { title, unit, enum: choices } = definition;
  const kind = particularKind(definition);
  const listed = choices ?? (kind === "boolean" ? [true, false] : undefined);
  if (listed) {
    return (
      <WordList>
        {listed.map((one) => (
          <WordButton key={String(one)} chosen={one === value} onClick={() => onTake(one)}>
            {typeof one === "boolean" ? e(one ? "trial.yes" : "trial.no") : String(one)}
          </WordButton>
        ))}
        <WordButton chosen={value === undefined} onClick={() => onTake("")}>
          {e("trial.none")}
        </WordButton>
      </WordList>
    );
  }
  const number = readNumber(text);
  const wrong = kind === "number" && text.trim() !== "" && number === undefined;
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (!wrong) onTake(kind === "number" ? (number ?? "") : text.trim());
  };
  return (
    <form className="blank-edit" onSubmit={take} noValidate>
      <LineField
        label={title}
        type={kind === "date" ? "date" : "text"}
        help={e("trial.empty")}
        error={wrong ? e("l.number-wrong") : undefined}
        trail={unit && printUnit(unit)}
        value={text}
        autoFocus
        autoComplete="off"
        onChange={(event) => setText(event.target.value)}
      />
      <Button type="submit" kind="secondary">
        {e("ed.done")}
      </Button>
    </form>
  );
};
