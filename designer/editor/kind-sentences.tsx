import { printUnit, Sentence } from "@roundbook/runner/form";
import type { PointDefinition } from "@roundbook/schemas";
import { pointKind } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { changePoint } from "../model/commands.ts";
import { optionsOf, withOptions } from "../model/draft-document.ts";
import { nameFor } from "../model/names.ts";
import { readNumber } from "../model/particular-fields.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

interface Props {
  readonly name: string;
  readonly point: PointDefinition;
}

const whole = (text: string): number | undefined =>
  /^\d$/.test(text.trim()) ? Number(text.trim()) : undefined;

const list = (text: string): string[] =>
  text
    .split(",")
    .map((one) => one.trim())
    .filter(Boolean);

/** The question itself, and what kind of answer it asks for. */
export const KindSentences = ({ name, point }: Props) => {
  const { document, apply } = useDesk();
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
  const take =
    (read: (text: string) => undefined | string) =>
    (text: string): string | undefined =>
      read(text);
  const editors = {
    [id("title")]: () => (
      <TextEdit
        label={e("l.question")}
        value={point.title}
        onTake={take((text) => {
          if (text.trim() === "") return e("l.question");
          change((one) => ({ ...one, title: text.trim() }));
          return undefined;
        })}
      />
    ),
    [id("unit")]: () => (
      <TextEdit
        label={e("l.unit")}
        value={quantity?.unit ?? ""}
        onTake={take((text) => {
          if (text.trim() === "") return e("l.unit");
          setQuantity({ unit: text.trim() });
          return undefined;
        })}
      />
    ),
    [id("also")]: () => (
      <TextEdit
        label={e("l.also")}
        value={(quantity?.alsoIn ?? []).join(", ")}
        onTake={take((text) => {
          const alsoIn = list(text);
          setQuantity({ alsoIn: alsoIn.length > 0 ? alsoIn : undefined });
          return undefined;
        })}
      />
    ),
    [id("decimals")]: () => (
      <TextEdit
        label={e("l.decimals")}
        value={String(quantity?.decimals ?? "")}
        onTake={take((text) => {
          const decimals = whole(text);
          if (decimals === undefined) return e("l.decimals");
          setQuantity({ decimals });
          return undefined;
        })}
      />
    ),
    [id("minimum")]: () => (
      <TextEdit
        label={e("l.minimum")}
        value={String(point.minimum ?? "")}
        onTake={take((text) => {
          const minimum = whole(text);
          if (minimum === undefined) return e("l.minimum");
          change((one) => ({ ...one, minimum }));
          return undefined;
        })}
      />
    ),
    [id("maximum")]: () => (
      <TextEdit
        label={e("l.maximum")}
        value={String(point.maximum ?? "")}
        onTake={take((text) => {
          const maximum = readNumber(text);
          if (maximum === undefined || !Number.isInteger(maximum)) return e("l.maximum");
          change((one) => ({ ...one, maximum }));
          return undefined;
        })}
      />
    ),
    [id("options")]: () => (
      <TextEdit
        many
        label={e("l.options")}
        value={optionsOf(point)
          .map(({ title }) => title)
          .join("\n")}
        onTake={take((text) => {
          const titles = [...new Set(text.split("\n").map((one) => one.trim()))].filter(Boolean);
          if (titles.length < 2) return e("l.options");
          change((one) => withOptions(one, optionsFrom(one, titles)));
          return undefined;
        })}
      />
    ),
    [id("usual")]: () => (
      <TextEdit
        label={e("l.range")}
        value={
          quantity?.plausible
            ? `${quantity.plausible.min ?? ""} ${e("s.to")} ${quantity.plausible.max ?? ""}`
            : ""
        }
        onTake={take((text) => {
          const found = (text.match(/-?\d+(?:[.,]\d+)?/g) ?? []).map((one) => readNumber(one));
          const [min, max] = found;
          setQuantity({
            plausible: min === undefined || max === undefined ? undefined : { min, max },
          });
          return undefined;
        })}
      />
    ),
    [id("help")]: () => (
      <TextEdit
        many
        label={e("l.help")}
        value={point.description ?? ""}
        onTake={take((text) => {
          change(({ description: _, ...rest }) =>
            text.trim() === "" ? rest : { ...rest, description: text.trim() },
          );
          return undefined;
        })}
      />
    ),
  };
  const opened = useOpened(editors);
  const usual = quantity?.plausible;
  return (
    <>
      <Sentence verb={e("verb.asks")} opened={opened}>
        <OpenBlank id={id("title")}>{point.title}</OpenBlank> {e("s.asks-for")} {e(`kind.${kind}`)}
        {kind === "reading" && (
          <>
            {" "}
            {e("s.in")} <OpenBlank id={id("unit")}>{printUnit(quantity?.unit ?? "…")}</OpenBlank>{" "}
            {e("s.or")}{" "}
            <OpenBlank id={id("also")}>
              {(quantity?.alsoIn ?? []).map(printUnit).join(", ") || "…"}
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
      {kind === "reading" && (
        <Sentence verb={e("verb.doubts")}>
          {e("s.anything-outside")}{" "}
          <OpenBlank id={id("usual")}>
            {usual
              ? `${usual.min} ${e("s.to")} ${usual.max} ${printUnit(quantity?.unit ?? "")}`
              : e("s.no-range")}
          </OpenBlank>
          {e("s.sure")}
        </Sentence>
      )}
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
