import { Sentence, WordButton, WordList } from "@roundbook/runner/form";
import { type LimitDefinition, type PointDefinition, pointKind } from "@roundbook/schemas";
import { Fragment, type ReactNode } from "react";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import { changePoint } from "../model/commands.ts";
import { formulaWords } from "../model/formula-words.ts";
import { compareWithLast, removeLast } from "../model/limit-clauses.ts";
import { boundsOf, changeLimit, otherSide, removeLimit, setBasis } from "../model/limit-edit.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { datePart } from "./date-part.tsx";
import { useDesk } from "./desk.tsx";
import { FormulaEdit } from "./formula-edit.tsx";
import { acceptPart, boundsPart, byWord, decisionPart, lastPart } from "./limit-parts.tsx";

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
  const kind = pointKind(point);
  const of = { document, name, point, limit, id, change };
  const plain = limit.sameAsLast === undefined || boundsOf(limit).length > 0;
  const parts =
    kind === "date"
      ? [datePart(of)]
      : byWord(point)
        ? [acceptPart(of)]
        : [...(plain ? [boundsPart(of)] : []), ...(limit.sameAsLast ? [lastPart(of)] : [])];
  const decides = decisionPart(of);
  const opened = useOpened({
    ...Object.assign({}, ...[...parts, decides].map(({ editors }) => editors)),
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
  });
  const severity = limit.severity ?? "fail";
  const measured = !byWord(point) && kind !== "date";
  const other = measured ? otherSide(limit) : null;
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
      {other && (
        <WordButton quiet onClick={() => setOpen(id(other))}>
          {e("l.other-side", { side: f(`note.${other}`) })}
        </WordButton>
      )}
      {(limit.sameAsLast || (measured && kind !== "readings")) && (
        <WordButton quiet onClick={() => change(limit.sameAsLast ? removeLast : compareWithLast)}>
          {e(limit.sameAsLast ? "l.limit-bound" : "l.limit-last")}
        </WordButton>
      )}
      {measured && boundsOf(limit).length > 0 && !limit.decision && (
        <WordButton quiet onClick={() => setOpen(id("decision/rule"))}>
          {e("l.limit-decision")}
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
      {parts.map(({ words }, index) => (
        // The clauses of a limit are always the same, in the same order.
        <Fragment key={index}>
          {index > 0 && f("limit.or")}
          {words}
        </Fragment>
      ))}
      {decides.words}
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
