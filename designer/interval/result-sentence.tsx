import type { RuleOf } from "@roundbook/schemas";
import { ChoiceEdit, OpenBlank } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { nextWords } from "../model/fact-words.ts";
import { useChecklist, useInterval, useRule } from "./interval-desk.tsx";
import { Line } from "./line.tsx";

/** "as the score “State of the wall” says: Good: 3 years; Poor: 6 months". */
export const ResultSentence = ({ rule }: { readonly rule: RuleOf<"by-result"> }) => {
  const change = useRule(rule);
  const { draft } = useInterval();
  const scores = Object.entries(useChecklist(draft.checklist)?.document.scores ?? {}).filter(
    ([, score]) => score.bands.some(({ next }) => next !== undefined),
  );
  const score = scores.find(([name]) => name === rule.score)?.[1];
  const bands = (score?.bands ?? []).flatMap(({ title, next }) =>
    next === undefined ? [] : [`${title}: ${nextWords(next)}`],
  );
  return (
    <Line
      name="every"
      verb={iv("verb.every")}
      editors={{
        score: () =>
          scores.length === 0 ? (
            <p className="second">{iv("no-scores")}</p>
          ) : (
            <ChoiceEdit
              label={iv("l.score")}
              choices={scores.map(([value, { title }]) => ({ value, label: title }))}
              chosen={rule.score}
              onChoose={(next) => change({ score: next })}
            />
          ),
      }}
    >
      {`${iv("s.as-result")} `}
      <OpenBlank id="score">{score?.title ?? (rule.score || iv("s.no-score"))}</OpenBlank>
      {` ${iv("s.as-result-says")} `}
      {bands.join("; ")}
    </Line>
  );
};
