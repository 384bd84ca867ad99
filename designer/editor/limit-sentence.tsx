import { Sentence, WordButton, WordList } from "@roundbook/runner/form";
import type { LimitDefinition, PointDefinition } from "@roundbook/schemas";
import type { ReactNode } from "react";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import { changePoint } from "../model/commands.ts";
import { optionsOf } from "../model/draft-document.ts";
import { formulaWords } from "../model/formula-words.ts";
import {
  BOUND_KINDS,
  boundsOf,
  changeLimit,
  changeSide,
  otherSide,
  readBound,
  removeBound,
  removeLimit,
  setBasis,
  setBound,
} from "../model/limit-edit.ts";
import { boundWords, choiceWords } from "../model/limit-sentence.ts";
import { ChoiceEdit, ManyEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { FormulaEdit } from "./formula-edit.tsx";

const accepted = (point: PointDefinition): { value: string; label: string }[] =>
  (point.$ref === "#/$defs/check"
    ? ["ok", "not-ok"]
    : optionsOf(point).map((option) => option.const)
  ).map((value) => ({ value, label: choiceWords(point, value) }));

interface LimitProps {
  readonly name: string;
  readonly point: PointDefinition;
  readonly limit: LimitDefinition;
  readonly at: number;
  /** Marks of the problems that lie in this limit. */
  readonly marks: ReactNode;
}

/** One limit as a sentence: what fails or advises, from which bound, because of what. */
export const LimitSentence = ({ name, point, limit, at, marks }: LimitProps) => {
  const { document, apply, setOpen } = useDesk();
  const id = (part: string) => `${name}/limits/${at}/${part}`;
  const change = (next: (limit: LimitDefinition) => LimitDefinition) =>
    apply(changePoint(document, name, (one) => changeLimit(one, at, next)));
  const words = accepted(point);
  const byWord = point.$ref === "#/$defs/check" || point.$ref === "#/$defs/choice";
  const editors: Record<string, () => ReactNode> = {
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
    [id("when")]: () => (
      <FormulaEdit
        wanted={{ condition: true }}
        label={e("l.limit-when")}
        value={limit.when ?? ""}
        onTake={(text) => {
          change(({ when: _, ...rest }) =>
            text.trim() === "" ? rest : { ...rest, when: text.trim() },
          );
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
  const opened = useOpened(editors);
  const severity = limit.severity ?? "fail";
  const bounds = boundsOf(limit);
  const shown = bounds.length > 0 ? bounds : [{ kind: "max" as const, bound: "…" }];
  const other = otherSide(limit);
  const foot = (
    <WordList>
      <WordButton
        quiet
        onClick={() =>
          change((one) => ({ ...one, severity: severity === "fail" ? "advisory" : "fail" }))
        }
      >
        {e(severity === "fail" ? "l.make-advise" : "l.make-fail")}
      </WordButton>
      {!byWord && other && (
        <WordButton quiet onClick={() => setOpen(id(other))}>
          {e("l.other-side", { side: f(`note.${other}`) })}
        </WordButton>
      )}
      {!limit.when && (
        <WordButton quiet onClick={() => setOpen(id("when"))}>
          {e("l.only-when")}
        </WordButton>
      )}
      <WordButton
        quiet
        onClick={() => {
          setOpen(null);
          apply(changePoint(document, name, (one) => removeLimit(one, at)));
        }}
      >
        {e("ed.remove-limit")}
      </WordButton>
    </WordList>
  );
  return (
    <Sentence
      verb={e(severity === "fail" ? "verb.fails" : "verb.advises")}
      opened={
        opened && (
          <>
            {opened}
            {foot}
          </>
        )
      }
    >
      {byWord ? (
        <>
          {e("s.unless")}{" "}
          <OpenBlank id={id("accept")}>
            {words
              .filter(({ value }) => limit.accept?.includes(value))
              .map(({ label }) => label)
              .join(f("limit.or")) || "…"}
          </OpenBlank>
        </>
      ) : (
        shown.map(({ kind, bound }, index) => (
          <span key={kind}>
            {index > 0 && f("limit.or")}
            <OpenBlank id={id(`${kind}-side`)}>{f(`note.${kind}`)}</OpenBlank>{" "}
            <OpenBlank id={id(kind)}>
              {bound === "…" ? "…" : boundWords(document, point, bound)}
            </OpenBlank>
          </span>
        ))
      )}
      {limit.when && (
        <>
          {`, ${e("s.when")} `}
          <OpenBlank id={id("when")}>{formulaWords(document, limit.when)}</OpenBlank>
        </>
      )}
      {`, ${e("s.because")} `}
      <OpenBlank id={id("basis")} label={limit.basis ? undefined : e("l.basis-open")}>
        {limit.basis ?? e("s.no-basis")}
      </OpenBlank>
      {marks}
    </Sentence>
  );
};
