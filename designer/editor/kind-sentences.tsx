import { printUnit, Sentence } from "@roundbook/runner/form";
import type { PointDefinition } from "@roundbook/schemas";
import { POINT_KINDS, pointKind } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { changeKind } from "../model/change-kind.ts";
import { changePoint } from "../model/commands.ts";
import { optionsOf, withOptions } from "../model/draft-document.ts";
import { nameFor } from "../model/names.ts";
import { readNumber } from "../model/particular-fields.ts";
import { readUnit } from "../model/read-unit.ts";
import { ChoiceEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { UnitEdit } from "./unit-edit.tsx";

interface Props {
  readonly name: string;
  readonly point: PointDefinition;
  /** Where the point goes on under another name. */
  readonly onGo: (name: string) => void;
}

const whole = (text: string): number | undefined =>
  /^\d$/.test(text.trim()) ? Number(text.trim()) : undefined;

const list = (text: string): string[] =>
  text
    .split(",")
    .map((one) => one.trim())
    .filter(Boolean);

/** The question itself, and what kind of answer it asks for. */
export const KindSentences = ({ name, point, onGo }: Props) => {
  const { document, apply, retired } = useDesk();
  const kind = pointKind(point);
  const id = (part: string) => `${name}/${part}`;
  const change = (next: (point: PointDefinition) => PointDefinition) =>
    apply(changePoint(document, name, next));
  const quantity = point.quantity;
  const setQuantity = (members: Partial<NonNullable<PointDefinition["quantity"]>>) =>
    change((one) => ({
      ...one,
      quantity: { unit: "1", ...one.quantity, ...members },
    }));
  const editors = {
    [id("title")]: () => (
      <TextEdit
        label={e("l.question")}
        value={point.title}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          change((one) => ({ ...one, title: text.trim() }));
          return undefined;
        }}
      />
    ),
    [id("kind")]: () => (
      <ChoiceEdit
        label={e("l.kind")}
        choices={POINT_KINDS.map((value) => ({ value, label: e(`kind.${value}`) }))}
        chosen={kind}
        onChoose={(to) => {
          const made = changeKind(document, name, to, retired);
          apply(made.document);
          if (made.name !== name) onGo(made.name);
        }}
      />
    ),
    [id("unit")]: () => (
      <UnitEdit needed value={quantity?.unit} onTake={(unit) => unit && setQuantity({ unit })} />
    ),
    [id("also")]: () => (
      <TextEdit
        label={e("l.also")}
        value={(quantity?.alsoIn ?? []).map(printUnit).join(", ")}
        onTake={(text) => {
          const units = list(text).map((one) => readUnit(one) ?? one);
          const unknown = units.find((unit) => readUnit(unit) === undefined);
          if (unknown !== undefined) return e("l.unit-unknown", { text: unknown });
          setQuantity({ alsoIn: units.length > 0 ? units : undefined });
          return undefined;
        }}
      />
    ),
    [id("decimals")]: () => (
      <TextEdit
        label={e("l.decimals")}
        value={String(quantity?.decimals ?? "")}
        onTake={(text) => {
          const decimals = whole(text);
          if (decimals === undefined) return e("l.number-wrong");
          setQuantity({ decimals });
          return undefined;
        }}
      />
    ),
    [id("minimum")]: () => (
      <TextEdit
        label={e("l.minimum")}
        value={String(point.minimum ?? "")}
        onTake={(text) => {
          const minimum = readNumber(text);
          if (minimum === undefined || !Number.isInteger(minimum)) return e("l.number-wrong");
          change((one) => ({ ...one, minimum }));
          return undefined;
        }}
      />
    ),
    [id("maximum")]: () => (
      <TextEdit
        label={e("l.maximum")}
        value={String(point.maximum ?? "")}
        onTake={(text) => {
          const maximum = readNumber(text);
          if (maximum === undefined || !Number.isInteger(maximum)) return e("l.number-wrong");
          change((one) => ({ ...one, maximum }));
          return undefined;
        }}
      />
    ),
    [id("options")]: () => (
      <TextEdit
        many
        label={e("l.options")}
        value={optionsOf(point)
          .map(({ title }) => title)
          .join("\n")}
        onTake={(text) => {
          const titles = [...new Set(text.split("\n").map((one) => one.trim()))].filter(Boolean);
          if (titles.length < 2) return e("l.options-two");
          change((one) => withOptions(one, optionsFrom(one, titles)));
          return undefined;
        }}
      />
    ),
    [id("help")]: () => (
      <TextEdit
        many
        label={e("l.help")}
        value={point.description ?? ""}
        onTake={(text) => {
          change(({ description: _, ...rest }) =>
            text.trim() === "" ? rest : { ...rest, description: text.trim() },
          );
          return undefined;
        }}
      />
    ),
  };
  const opened = useOpened(editors);
  return (
    <>
      <Sentence verb={e("verb.asks")} opened={opened}>
        <OpenBlank id={id("title")}>{point.title}</OpenBlank> {e("s.asks-for")}{" "}
        <OpenBlank id={id("kind")}>{e(`kind.${kind}`)}</OpenBlank>
        {kind === "reading" && (
          <>
            {" "}
            {e("s.in")}{" "}
            <OpenBlank id={id("unit")}>
              {printUnit(quantity?.unit ?? "") || e("around.no-unit")}
            </OpenBlank>{" "}
            {e("s.or")}{" "}
            <OpenBlank id={id("also")}>
              {(quantity?.alsoIn ?? []).map(printUnit).join(", ") || e("s.no-other-unit")}
            </OpenBlank>
            , {e("s.with")}{" "}
            <OpenBlank id={id("decimals")}>
              {e("s.decimals", { count: quantity?.decimals ?? 0 })}
            </OpenBlank>
          </>
        )}
        {kind === "graded" && (
          <>
            {" "}
            {e("s.from")} <OpenBlank id={id("minimum")}>{String(point.minimum ?? "…")}</OpenBlank>{" "}
            {e("s.to")} <OpenBlank id={id("maximum")}>{String(point.maximum ?? "…")}</OpenBlank>
          </>
        )}
        {kind === "choice" && (
          <>
            {": "}
            <OpenBlank id={id("options")}>
              {optionsOf(point)
                .map(({ title }) => title)
                .join(", ") || "…"}
            </OpenBlank>
          </>
        )}
      </Sentence>
      <Sentence verb={e("verb.helps")}>
        <OpenBlank id={id("help")}>{point.description ?? e("s.no-help")}</OpenBlank>
      </Sentence>
    </>
  );
};

/** Options keep their value while their title stands; a new title gets a value of its own. */
const optionsFrom = (point: PointDefinition, titles: readonly string[]) => {
  const before = optionsOf(point);
  const taken = new Set(before.map((option) => option.const));
  return titles.map((title) => {
    const kept = before.find((option) => option.title === title);
    if (kept) return kept;
    const value = nameFor(title, taken, "option");
    taken.add(value);
    return { const: value, title };
  });
};
