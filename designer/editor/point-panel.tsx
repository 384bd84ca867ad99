import { ProblemMark, SentencePanel, WordButton, WordList } from "@roundbook/runner/form";
import {
  type LimitDefinition,
  type PointDefinition,
  type PointKind,
  pointKind,
} from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { changePoint, duplicatePoint, movePoint, removePoint } from "../model/commands.ts";
import { optionsOf } from "../model/draft-document.ts";
import { addLimit } from "../model/limit-edit.ts";
import { AskSentences } from "./ask-sentences.tsx";
import { useDesk } from "./desk.tsx";
import { DoubtSentence } from "./doubt-sentence.tsx";
import { KindSentences } from "./kind-sentences.tsx";
import { LimitSentence } from "./limit-sentence.tsx";
import type { Footnoted } from "./problem-place.ts";
import { ThenSentence } from "./then-sentence.tsx";
import { WaitSentence } from "./wait-sentence.tsx";

const newLimit = (point: PointDefinition): LimitDefinition => {
  if (point.$ref === "#/$defs/check") return { accept: ["ok"] };
  if (pointKind(point) === "date") return { notBefore: { from: "today" } };
  const [option] = optionsOf(point);
  return option ? { accept: [option.const] } : {};
};

const LIMITLESS: ReadonlySet<PointKind> = new Set(["text", "photo", "signature"]);
const canLimit = (point: PointDefinition): boolean => !LIMITLESS.has(pointKind(point));
/** What is waited for before it is read. */
const canWait = (point: PointDefinition): boolean =>
  pointKind(point) === "reading" || pointKind(point) === "readings";

/** Everything about one point, as sentences whose blanks open in place. */
export const PointPanel = ({
  name,
  point,
  problems,
  onGo,
}: {
  readonly name: string;
  readonly point: PointDefinition;
  readonly problems: readonly Footnoted[];
  readonly onGo: (name: string | null) => void;
}) => {
  const { document, apply, setOpen, retired } = useDesk();
  const marksOf = (at: number) =>
    problems
      .filter(({ problem }) => problem.pointer.startsWith(`/properties/${name}/limits/${at}`))
      .map(({ number }) => (
        <ProblemMark key={number} number={number} label={e("ed.problem", { number })} />
      ));
  const limitToo = () => {
    apply(changePoint(document, name, (one) => addLimit(one, newLimit(one))));
    const at = point.limits?.length ?? 0;
    const [first = "max"] = Object.keys(newLimit(point));
    setOpen(`${name}/limits/${at}/${first}`);
  };
  const duplicate = () => {
    const made = duplicatePoint(document, name, retired);
    apply(made.document);
    onGo(made.name);
  };
  // Nobody is asked for what is worked out.
  const worked = pointKind(point) === "calculated";
  return (
    <SentencePanel label={point.title}>
      <KindSentences name={name} point={point} onGo={onGo} />
      {!worked && <AskSentences name={name} point={point} />}
      {canWait(point) && <WaitSentence name={name} point={point} />}
      {(point.limits ?? []).map((limit, at) => (
        // A limit has no identity but its place.
        <LimitSentence key={at} {...{ name, point, limit, at }} marks={marksOf(at)} />
      ))}
      {canLimit(point) && <ThenSentence name={name} point={point} />}
      {point.quantity && !worked && <DoubtSentence name={name} point={point} />}
      <div className="sentence-actions">
        <WordList>
          {canLimit(point) && <WordButton onClick={limitToo}>{e("ed.another-limit")}</WordButton>}
          <WordButton onClick={() => apply(movePoint(document, name, -1))}>{e("ed.up")}</WordButton>
          <WordButton onClick={() => apply(movePoint(document, name, 1))}>
            {e("ed.down")}
          </WordButton>
          <WordButton onClick={duplicate}>{e("ed.duplicate")}</WordButton>
          <WordButton
            onClick={() => {
              apply(removePoint(document, name));
              onGo(null);
            }}
          >
            {e("ed.remove")}
          </WordButton>
        </WordList>
      </div>
    </SentencePanel>
  );
};
