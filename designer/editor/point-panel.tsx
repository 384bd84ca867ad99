import { SentencePanel, WordButton, WordList } from "@roundbook/runner/form";
import type { PointDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { changePoint, duplicatePoint, movePoint, removePoint } from "../model/commands.ts";
import { addLimit } from "../model/limit-edit.ts";
import { AskSentences } from "./ask-sentences.tsx";
import { useDesk } from "./desk.tsx";
import { KindSentences } from "./kind-sentences.tsx";
import { LimitSentence } from "./limit-sentence.tsx";
import { ThenSentence } from "./then-sentence.tsx";

const newLimit = (point: PointDefinition) =>
  point.$ref === "#/$defs/check" ? { accept: ["ok"] } : {};

const canLimit = (point: PointDefinition): boolean =>
  point.$ref !== "#/$defs/text" && point.$ref !== "#/$defs/photo";

/** Everything about one point, as sentences whose blanks open in place. */
export const PointPanel = ({
  name,
  point,
  onGo,
}: {
  readonly name: string;
  readonly point: PointDefinition;
  readonly onGo: (name: string | null) => void;
}) => {
  const { document, apply } = useDesk();
  const duplicate = () => {
    const made = duplicatePoint(document, name);
    apply(made.document);
    onGo(made.name);
  };
  return (
    <SentencePanel label={point.title}>
      <KindSentences name={name} point={point} />
      <AskSentences name={name} point={point} />
      {(point.limits ?? []).map((limit, at) => (
        // A limit has no identity but its place.
        <LimitSentence key={at} {...{ name, point, limit, at }} />
      ))}
      {canLimit(point) && <ThenSentence name={name} point={point} />}
      <div className="sentence-actions">
        <WordList>
          {canLimit(point) && (
            <WordButton
              onClick={() =>
                apply(changePoint(document, name, (one) => addLimit(one, newLimit(one))))
              }
            >
              {e("ed.another-limit")}
            </WordButton>
          )}
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
