import { printUnit, Sentence, WordButton } from "@roundbook/runner/form";
import type { LimitDefinition, PointDefinition } from "@roundbook/schemas";
import type { ReactNode } from "react";
import { e } from "../messages/editor.ts";
import { changePoint } from "../model/commands.ts";
import { optionsOf } from "../model/draft-document.ts";
import {
  BOUND_KINDS,
  type BoundKind,
  boundsOf,
  changeLimit,
  changeSide,
  readBound,
  removeLimit,
  setBasis,
  setBound,
} from "../model/limit-edit.ts";
import { ChoiceEdit, ManyEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { FormulaEdit } from "./formula-edit.tsx";

const SIDES: Record<BoundKind, string> = {
  max: e("s.above"),
  min: e("s.below"),
  exclusiveMax: e("s.at-or-above"),
  exclusiveMin: e("s.at-or-below"),
};

const accepted = (point: PointDefinition): { value: string; label: string }[] => {
  if (point.$ref === "#/$defs/check")
    return [
      { value: "ok", label: "OK" },
      { value: "not-ok", label: "not OK" },
    ];
  return optionsOf(point).map((option) => ({ value: option.const, label: option.title }));
};

/** One limit as a sentence: what fails or advises, from which bound, because of what. */
export const LimitSentence = ({
  name,
  point,
  limit,
  at,
}: {
  readonly name: string;
  readonly point: PointDefinition;
  readonly limit: LimitDefinition;
  readonly at: number;
}) => {
  const { document, apply, setOpen } = useDesk();
  const id = (part: string) => `${name}/limits/${at}/${part}`;
  const change = (next: (limit: LimitDefinition) => LimitDefinition, tag?: string) =>
    apply(
      changePoint(document, name, (one) => changeLimit(one, at, next)),
      tag,
    );
  const unit = point.quantity?.unit;
  const bounds = boundsOf(limit);
  const words = accepted(point);
  const byWord = point.$ref === "#/$defs/check" || point.$ref === "#/$defs/choice";
  const editors: Record<string, () => ReactNode> = {
    [id("severity")]: () => (
      <ChoiceEdit
        label={e("l.severity")}
        choices={[
          { value: "fail", label: e("l.fails") },
          { value: "advisory", label: e("l.advises") },
        ]}
        chosen={limit.severity ?? "fail"}
        onChoose={(severity) => change((one) => ({ ...one, severity }))}
      />
    ),
    [id("basis")]: () => (
      <TextEdit
        label={e("l.basis")}
        value={limit.basis ?? ""}
        onTake={(text) => {
          change((one) => setBasis(one, text));
          return undefined;
        }}
      />
    ),
    [id("accept")]: () => (
      <ManyEdit
        label={e("l.accept")}
        choices={words}
        chosen={(limit.accept ?? []).map(String)}
        onChange={(accept) =>
          change(({ accept: _, ...rest }) => (accept.length > 0 ? { ...rest, accept } : rest))
        }
      />
    ),
  };
  for (const kind of BOUND_KINDS) {
    editors[id(kind)] = () => (
      <FormulaEdit
        label={e("l.bound")}
        value={limit[kind] === undefined ? "" : String(limit[kind])}
        unit={unit}
        onTake={(text) => {
          const bound = readBound(text);
          if (bound === undefined) return e("l.bound");
          change((one) => setBound(one, kind, bound));
          return undefined;
        }}
      />
    );
    editors[id(`${kind}-side`)] = () => (
      <ChoiceEdit
        label={e("l.side")}
        choices={BOUND_KINDS.map((value) => ({ value, label: SIDES[value] }))}
        chosen={limit[kind] === undefined ? null : kind}
        onChoose={(to) => change((one) => changeSide(one, kind, to))}
      />
    );
  }
  const opened = useOpened(editors);
  const severity = limit.severity ?? "fail";
  const shown = bounds.length > 0 ? bounds : [{ kind: "max" as const, bound: "…" }];
  return (
    <Sentence verb={e(severity === "fail" ? "verb.fails" : "verb.advises")} opened={opened}>
      {byWord ? (
        <>
          {e("s.unless")}{" "}
          <OpenBlank id={id("accept")}>
            {words
              .filter(({ value }) => limit.accept?.includes(value))
              .map(({ label }) => label)
              .join(", ") || "…"}
          </OpenBlank>
        </>
      ) : (
        shown.map(({ kind, bound }, index) => (
          <span key={kind}>
            {index > 0 && ` ${e("s.or")} `}
            <OpenBlank id={id(`${kind}-side`)}>{SIDES[kind]}</OpenBlank>{" "}
            <OpenBlank id={id(kind)}>
              {typeof bound === "number" && unit
                ? `${bound}\u00a0${printUnit(unit)}`
                : String(bound)}
            </OpenBlank>
          </span>
        ))
      )}
      {`, ${e("s.because")} `}
      <OpenBlank id={id("basis")}>{limit.basis ?? e("s.no-basis")}</OpenBlank>
      {". "}
      <WordButton quiet onClick={() => setOpen(id("severity"))}>
        {e("l.severity")}
      </WordButton>{" "}
      <WordButton
        quiet
        onClick={() => apply(changePoint(document, name, (one) => removeLimit(one, at)))}
      >
        {e("ed.remove-limit")}
      </WordButton>
    </Sentence>
  );
};
