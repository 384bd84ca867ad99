import { durationWords, useMessages } from "@roundbook/runner/form";
import type { RuleOf } from "@roundbook/schemas";
import { OpenBlank } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { useRule } from "./interval-desk.tsx";
import { LengthEdit, Line, MarginEdit } from "./line.tsx";

/** "no sooner than 3 weeks and no later than 5 weeks after it was last done, due after 4 weeks". */
export const SpacingSentence = ({ rule }: { readonly rule: RuleOf<"spacing"> }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  const { min, max, every } = rule;
  return (
    <Line
      name="every"
      verb={iv("verb.spacing")}
      editors={{
        min: () => (
          <LengthEdit label={iv("l.min")} value={min} onTake={(next) => change({ min: next })} />
        ),
        max: () => (
          <LengthEdit label={iv("l.max")} value={max} onTake={(next) => change({ max: next })} />
        ),
        every: () => (
          <MarginEdit
            label={iv("l.due-after")}
            value={every}
            onTake={(next) => change({ every: next })}
          />
        ),
      }}
    >
      {`${iv("s.no-sooner")} `}
      <OpenBlank id="min">{durationWords(t, min)}</OpenBlank>
      {` ${iv("s.no-later")} `}
      <OpenBlank id="max">{durationWords(t, max)}</OpenBlank>
      {` ${iv("s.after-last")} `}
      <OpenBlank id="every">{durationWords(t, every ?? max)}</OpenBlank>
    </Line>
  );
};
