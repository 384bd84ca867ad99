import { printUnit, Sentence, WordButton } from "@roundbook/runner/form";
import { type ParticularDefinition, particularsInOrder } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import {
  addParticular,
  changeParticular,
  PARTICULAR_KINDS,
  particularKind,
  readChoices,
  readRange,
  removeParticular,
  withKind,
} from "../model/around-edit.ts";
import { AddBlank, ChoiceEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { UnitEdit } from "./unit-edit.tsx";

/** What the checklist needs to know of an asset: a sentence for each particular. */
export const ParticularSentences = () => {
  const { document, apply, setOpen } = useDesk();
  const definitions = particularsInOrder(document.particulars ?? {});
  return (
    <>
      {definitions.map(([name, definition], at) => (
        <ParticularSentence key={name} {...{ name, definition }} first={at === 0} />
      ))}
      <AddBlank
        id="particulars/new"
        verb={definitions.length === 0 ? e("verb.needs") : undefined}
        before={definitions.length === 0 ? e("around.no-particulars") : undefined}
        word={e("around.add-particular")}
        label={e("around.particular-title")}
        onAdd={(title) => {
          const made = addParticular(document, title);
          apply(made.document);
          queueMicrotask(() => setOpen(`particulars/${made.name}/kind`));
        }}
      />
    </>
  );
};

const ParticularSentence = ({
  name,
  definition,
  first,
}: {
  readonly name: string;
  readonly definition: ParticularDefinition;
  readonly first: boolean;
}) => {
  const { document, apply, setOpen } = useDesk();
  const kind = particularKind(definition);
  const id = (part: string) => `particulars/${name}/${part}`;
  const change = (next: (one: ParticularDefinition) => ParticularDefinition) =>
    apply(changeParticular(document, name, next));
  const { unit, enum: choices, minimum, maximum } = definition;
  const opened = useOpened({
    [id("title")]: () => (
      <TextEdit
        label={e("around.particular-title")}
        value={definition.title}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          change((one) => ({ ...one, title: text.trim() }));
          return undefined;
        }}
      />
    ),
    [id("kind")]: () => (
      <ChoiceEdit
        label={e("around.particular-kind")}
        choices={PARTICULAR_KINDS.map((value) => ({ value, label: f(`kind.${value}`) }))}
        chosen={kind}
        onChoose={(to) => change((one) => withKind(one, to))}
      />
    ),
    [id("unit")]: () => (
      <UnitEdit
        value={unit}
        onTake={(to) => change(({ unit: _, ...rest }) => (to ? { ...rest, unit: to } : rest))}
      />
    ),
    [id("choices")]: () => (
      <TextEdit
        many
        label={e("around.choices")}
        value={(choices ?? []).join("\n")}
        onTake={(text) => {
          const read = readChoices(text, kind);
          if (!read) return e("around.choices-numbers");
          change(({ enum: _, ...rest }) => (read.length > 0 ? { ...rest, enum: read } : rest));
          return undefined;
        }}
      />
    ),
    [id("range")]: () => (
      <TextEdit
        label={e("around.range")}
        value={
          minimum === undefined && maximum === undefined
            ? ""
            : `${minimum ?? ""} ${e("s.to")} ${maximum ?? ""}`
        }
        onTake={(text) => {
          const range = readRange(text);
          if (!range) return e("l.range-wrong");
          change(({ minimum: _, maximum: __, ...rest }) => ({
            ...rest,
            ...(range.min === undefined ? {} : { minimum: range.min }),
            ...(range.max === undefined ? {} : { maximum: range.max }),
          }));
          return undefined;
        }}
      />
    ),
  });
  const foot = (
    <p className="second">
      {e("around.known-as")} <span className="mono">asset.{name}</span>.{" "}
      {kind === "number" && !choices && (
        <WordButton quiet onClick={() => setOpen(id("choices"))}>
          {e("around.fixed-choices")}
        </WordButton>
      )}{" "}
      <WordButton
        quiet
        onClick={() => {
          setOpen(null);
          apply(removeParticular(document, name));
        }}
      >
        {e("ed.remove")}
      </WordButton>
    </p>
  );
  return (
    <Sentence
      verb={first ? e("verb.needs") : undefined}
      opened={
        opened && (
          <>
            {opened}
            {foot}
          </>
        )
      }
    >
      <OpenBlank id={id("title")}>{definition.title}</OpenBlank>:{" "}
      <OpenBlank id={id("kind")}>{f(`kind.${kind}`)}</OpenBlank>
      {kind === "number" && (
        <>
          {" "}
          {e("s.in")}{" "}
          <OpenBlank id={id("unit")}>{unit ? printUnit(unit) : e("around.no-unit")}</OpenBlank>
        </>
      )}
      {(choices || kind === "string") && (
        <>
          {", "}
          <OpenBlank id={id("choices")}>
            {choices
              ? f("particular.choices", { choices: choices.map(String).join(", ") })
              : e("around.any")}
          </OpenBlank>
        </>
      )}
      {kind === "number" && !choices && (
        <>
          {", "}
          <OpenBlank id={id("range")}>
            {minimum === undefined && maximum === undefined
              ? e("around.any-size")
              : `${minimum ?? "…"} ${e("s.to")} ${maximum ?? "…"}`}
          </OpenBlank>
        </>
      )}
    </Sentence>
  );
};
