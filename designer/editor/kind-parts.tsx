import { printUnit } from "@roundbook/runner/form";
import { COMBINATIONS, type PointDefinition, pointKind } from "@roundbook/schemas";
import type { ReactNode } from "react";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { optionsOf, withOptions } from "../model/draft-document.ts";
import { formulaWords } from "../model/formula-words.ts";
import { nameFor } from "../model/names.ts";
import { readNumber } from "../model/read-number.ts";
import { readUnit } from "../model/read-unit.ts";
import { readCount, setSeveral } from "../model/several-edit.ts";
import { ChoiceEdit, OpenBlank, TextEdit } from "./blanks.tsx";
import { FormulaEdit } from "./formula-edit.tsx";
import { UnitEdit } from "./unit-edit.tsx";

/** What goes with a kind: its blanks by id, and how the sentence goes on with them. */
export interface KindPart {
  readonly editors: Readonly<Record<string, () => ReactNode>>;
  readonly words: ReactNode;
}

export interface PartOf {
  readonly document: DraftDocument;
  readonly point: PointDefinition;
  readonly id: (part: string) => string;
  readonly change: (next: (point: PointDefinition) => PointDefinition) => void;
}

const list = (text: string): string[] =>
  text
    .split(",")
    .map((one) => one.trim())
    .filter(Boolean);

/** The unit, other units accepted, and decimals. */
export const quantityPart = ({ point, id, change }: PartOf): KindPart => {
  const { quantity } = point;
  const set = (members: Partial<NonNullable<PointDefinition["quantity"]>>) =>
    change((one) => ({ ...one, quantity: { unit: "1", ...one.quantity, ...members } }));
  const worked = pointKind(point) === "calculated";
  return {
    editors: {
      [id("unit")]: () => (
        <UnitEdit needed value={quantity?.unit} onTake={(unit) => unit && set({ unit })} />
      ),
      [id("also")]: () => (
        <TextEdit
          label={e("l.also")}
          value={(quantity?.alsoIn ?? []).map(printUnit).join(", ")}
          onTake={(text) => {
            const units = list(text).map((one) => readUnit(one) ?? one);
            const unknown = units.find((unit) => readUnit(unit) === undefined);
            if (unknown !== undefined) return e("l.unit-unknown", { text: unknown });
            set({ alsoIn: units.length > 0 ? units : undefined });
            return undefined;
          }}
        />
      ),
      [id("decimals")]: () => (
        <TextEdit
          label={e("l.decimals")}
          value={String(quantity?.decimals ?? "")}
          onTake={(text) => {
            if (!/^\d$/.test(text.trim())) return e("l.number-wrong");
            set({ decimals: Number(text.trim()) });
            return undefined;
          }}
        />
      ),
    },
    words: (
      <>
        {" "}
        {e("s.in")}{" "}
        <OpenBlank id={id("unit")}>
          {printUnit(quantity?.unit ?? "") || e("around.no-unit")}
        </OpenBlank>{" "}
        {!worked && (
          <>
            {e("s.or")}{" "}
            <OpenBlank id={id("also")}>
              {(quantity?.alsoIn ?? []).map(printUnit).join(", ") || e("s.no-other-unit")}
            </OpenBlank>
            {", "}
          </>
        )}
        {e("s.with")}{" "}
        <OpenBlank id={id("decimals")}>
          {e("s.decimals", { count: quantity?.decimals ?? 0 })}
        </OpenBlank>
      </>
    ),
  };
};

/** The lowest and the highest grade. */
export const rangePart = ({ point, id, change }: PartOf): KindPart => {
  const whole = (member: "minimum" | "maximum") => () => (
    <TextEdit
      label={e(`l.${member}`)}
      value={String(point[member] ?? "")}
      onTake={(text) => {
        const value = readNumber(text);
        if (value === undefined || !Number.isInteger(value)) return e("l.number-wrong");
        change((one) => ({ ...one, [member]: value }));
        return undefined;
      }}
    />
  );
  return {
    editors: { [id("minimum")]: whole("minimum"), [id("maximum")]: whole("maximum") },
    words: (
      <>
        {" "}
        {e("s.from")} <OpenBlank id={id("minimum")}>{String(point.minimum ?? "…")}</OpenBlank>{" "}
        {e("s.to")} <OpenBlank id={id("maximum")}>{String(point.maximum ?? "…")}</OpenBlank>
      </>
    ),
  };
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

export const optionsPart = ({ point, id, change }: PartOf): KindPart => ({
  editors: {
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
  },
  words: (
    <>
      {": "}
      <OpenBlank id={id("options")}>
        {optionsOf(point)
          .map(({ title }) => title)
          .join(", ") || "…"}
      </OpenBlank>
    </>
  ),
});

/** How many readings, and what stands for all of them. */
export const severalPart = ({ document, point, id, change }: PartOf): KindPart => {
  const { count, combine = "each" } = point.several ?? {};
  return {
    editors: {
      [id("several/count")]: () => (
        <FormulaEdit
          label={e("l.several-count")}
          value={String(count ?? "")}
          wanted={{ unit: "1" }}
          onTake={(text) => {
            const read = readCount(text);
            if (read === undefined) return e("l.several-wrong");
            change((one) => setSeveral(one, { count: read }));
            return undefined;
          }}
        />
      ),
      [id("several/combine")]: () => (
        <ChoiceEdit
          label={e("l.several-combine")}
          choices={COMBINATIONS.map((value) => ({ value, label: e(`combine.${value}`) }))}
          chosen={combine}
          onChoose={(to) => change((one) => setSeveral(one, { combine: to }))}
        />
      ),
    },
    words: (
      <>
        {": "}
        <OpenBlank id={id("several/count")}>
          {typeof count === "string" ? formulaWords(document, count) : String(count ?? "…")}
        </OpenBlank>{" "}
        {e("s.of-them")} <OpenBlank id={id("several/combine")}>{e(`combine.${combine}`)}</OpenBlank>
      </>
    ),
  };
};

/** The formula of a point that is worked out. */
export const calculatePart = ({ document, point, id, change }: PartOf): KindPart => ({
  editors: {
    [id("calculate")]: () => (
      <FormulaEdit
        label={e("l.calculate")}
        value={point.calculate ?? ""}
        wanted={{ unit: point.quantity?.unit }}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          change((one) => ({ ...one, calculate: text.trim() }));
          return undefined;
        }}
      />
    ),
  },
  words: (
    <>
      {": "}
      <OpenBlank id={id("calculate")}>{formulaWords(document, point.calculate ?? "…")}</OpenBlank>
    </>
  ),
});
