import { printQuantity } from "@roundbook/runner/form";
import {
  DECISION_RULES,
  type LimitDefinition,
  type PointDefinition,
  pointKind,
} from "@roundbook/schemas";
import type { ReactNode } from "react";
import { anyOf } from "../messages/any-of.ts";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import { type DraftDocument, optionsOf } from "../model/draft-document.ts";
import { formulaWords } from "../model/formula-words.ts";
import { setDecision, setLast, setRule } from "../model/limit-clauses.ts";
import {
  BOUND_KINDS,
  boundsOf,
  changeSide,
  readBound,
  removeBound,
  setBound,
} from "../model/limit-edit.ts";
import { boundWords, choiceWords } from "../model/limit-sentence.ts";
import { readNumber } from "../model/read-number.ts";
import { ChoiceEdit, ManyEdit, OpenBlank, TextEdit } from "./blanks.tsx";
import { FormulaEdit } from "./formula-edit.tsx";

/** A clause of a limit: its blanks by id, and how the sentence says it. */
export interface LimitPart {
  readonly editors: Readonly<Record<string, () => ReactNode>>;
  readonly words: ReactNode;
}

export interface LimitPartOf {
  readonly document: DraftDocument;
  readonly name: string;
  readonly point: PointDefinition;
  readonly limit: LimitDefinition;
  readonly id: (part: string) => string;
  readonly change: (next: (limit: LimitDefinition) => LimitDefinition) => void;
}

export const byWord = (point: PointDefinition): boolean =>
  ["check", "choice", "choices"].includes(pointKind(point));

/** What passes, of a few words. */
export const acceptPart = ({ point, limit, id, change }: LimitPartOf): LimitPart => {
  const values =
    pointKind(point) === "check" ? ["ok", "not-ok"] : optionsOf(point).map((one) => one.const);
  const words = values.map((value) => ({ value, label: choiceWords(point, value) }));
  return {
    editors: {
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
    },
    words: (
      <>
        {e("s.unless")}{" "}
        <OpenBlank id={id("accept")}>
          {anyOf(
            words.filter(({ value }) => limit.accept?.includes(value)).map(({ label }) => label),
          ) || "…"}
        </OpenBlank>
      </>
    ),
  };
};

/** The bounds of a figure. */
export const boundsPart = ({ document, point, limit, id, change }: LimitPartOf): LimitPart => {
  const editors: Record<string, () => ReactNode> = {};
  for (const kind of BOUND_KINDS) {
    editors[id(kind)] = () => (
      <FormulaEdit
        label={e("l.bound")}
        value={limit[kind] === undefined ? "" : String(limit[kind])}
        wanted={{ unit: point.quantity?.unit }}
        onTake={(text) => {
          const bound = readBound(text);
          change((one) =>
            bound === undefined ? removeBound(one, kind) : setBound(one, kind, bound),
          );
          return undefined;
        }}
      />
    );
    editors[id(`${kind}-side`)] = () => (
      <ChoiceEdit
        label={e("l.side")}
        choices={BOUND_KINDS.map((value) => ({ value, label: f(`note.${value}`) }))}
        chosen={limit[kind] === undefined ? null : kind}
        onChoose={(to) => change((one) => changeSide(one, kind, to))}
      />
    );
  }
  const bounds = boundsOf(limit);
  const shown = bounds.length > 0 ? bounds : [{ kind: "max" as const, bound: "…" }];
  return {
    editors,
    words: shown.map(({ kind, bound }, index) => (
      <span key={kind}>
        {index > 0 && f("limit.or")}
        <OpenBlank id={id(`${kind}-side`)}>{f(`note.${kind}`)}</OpenBlank>{" "}
        <OpenBlank id={id(kind)}>
          {bound === "…" ? "…" : boundWords(document, point, bound)}
        </OpenBlank>
      </span>
    )),
  };
};

/** How far a figure may lie from the one of the inspection before. */
export const lastPart = ({ document, point, limit, id, change }: LimitPartOf): LimitPart => {
  const { within = 0, whenNone = "undecided" } = limit.sameAsLast ?? {};
  return {
    editors: {
      [id("sameAsLast/within")]: () => (
        <FormulaEdit
          label={e("l.last-within")}
          value={String(within)}
          wanted={{ unit: undefined }}
          onTake={(text) => {
            const bound = readBound(text);
            if (bound === undefined || (typeof bound === "number" && bound < 0))
              return e("l.number-wrong");
            change((one) => setLast(one, { within: bound }));
            return undefined;
          }}
        />
      ),
      [id("sameAsLast/whenNone")]: () => (
        <ChoiceEdit
          label={e("l.last-none")}
          choices={(["undecided", "not-applied"] as const).map((value) => ({
            value,
            label: e(`last.${value}`),
          }))}
          chosen={whenNone}
          onChoose={(to) => change((one) => setLast(one, { whenNone: to }))}
        />
      ),
    },
    words: (
      <>
        {e("s.last-further")}{" "}
        <OpenBlank id={id("sameAsLast/within")}>
          {typeof within === "number"
            ? printQuantity(within, point.quantity?.unit)
            : formulaWords(document, within)}
        </OpenBlank>{" "}
        {e("s.last-from")}{" "}
        <OpenBlank id={id("sameAsLast/whenNone")}>{e(`last.${whenNone}`)}</OpenBlank>
      </>
    ),
  };
};

/** How a reading near a bound is decided, by the uncertainty of its measurement. */
export const decisionPart = ({ document, point, limit, id, change }: LimitPartOf): LimitPart => {
  const { rule = "simple", uncertainty, guardFactor = 1 } = limit.decision ?? {};
  return {
    editors: {
      [id("decision/rule")]: () => (
        <ChoiceEdit
          label={e("l.decision-rule")}
          choices={DECISION_RULES.map((value) => ({ value, label: e(`decision.${value}`) }))}
          chosen={rule}
          onChoose={(to) => change((one) => setRule(one, to))}
        />
      ),
      [id("decision/uncertainty")]: () => (
        <FormulaEdit
          label={e("l.decision-uncertainty")}
          value={String(uncertainty ?? "")}
          wanted={{ unit: undefined }}
          onTake={(text) => {
            const bound = readBound(text);
            if (typeof bound === "number" && bound < 0) return e("l.number-wrong");
            change((one) => setDecision(one, { uncertainty: bound }));
            return undefined;
          }}
        />
      ),
      [id("decision/guardFactor")]: () => (
        <TextEdit
          label={e("l.decision-factor")}
          value={String(guardFactor)}
          onTake={(text) => {
            const factor = readNumber(text);
            if (factor === undefined || factor <= 0 || factor > 3) return e("l.number-wrong");
            change((one) => setDecision(one, { guardFactor: factor }));
            return undefined;
          }}
        />
      ),
    },
    words: limit.decision && (
      <>
        {`, ${e("s.decided")} `}
        <OpenBlank id={id("decision/rule")}>{e(`decision.${rule}`)}</OpenBlank>
        {`, ${e("s.uncertainty")} `}
        <OpenBlank id={id("decision/uncertainty")}>
          {typeof uncertainty === "number"
            ? printQuantity(uncertainty, point.quantity?.unit)
            : formulaWords(document, uncertainty ?? "…")}
        </OpenBlank>{" "}
        {e("s.guard")}{" "}
        <OpenBlank id={id("decision/guardFactor")}>
          {e("s.guard-times", { factor: guardFactor })}
        </OpenBlank>
      </>
    ),
  };
};
