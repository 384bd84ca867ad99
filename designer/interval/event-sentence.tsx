import { durationWords, useMessages } from "@roundbook/runner/form";
import type { RuleOf } from "@roundbook/schemas";
import { ChoiceEdit, ManyEdit, OpenBlank } from "../editor/blanks.tsx";
import { anyOf } from "../messages/any-of.ts";
import { iv } from "../messages/intervals.ts";
import { useRule } from "./interval-desk.tsx";
import { LengthEdit, Line } from "./line.tsx";

const EVENTS = ["repaired", "modified", "returned", "reopened"] as const;

/** "after a repair or a change to it: within the same day; not to be used before it is done". */
export const EventSentence = ({ rule }: { readonly rule: RuleOf<"on-event"> }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  const { after, within, blocks = false } = rule;
  const sameDay = !/[1-9]/.test(within);
  return (
    <Line
      name="every"
      verb={iv("verb.after")}
      editors={{
        after: () => (
          <ManyEdit
            label={iv("l.events")}
            choices={EVENTS.map((value) => ({ value, label: iv(`event.${value}`) }))}
            chosen={after}
            onChange={(chosen) => {
              const inOrder = EVENTS.filter((one) => chosen.includes(one));
              // One event stays: after nothing it would never be due.
              if (inOrder.length > 0) change({ after: inOrder });
            }}
          />
        ),
        within: () => (
          <LengthEdit
            label={iv("l.within-event")}
            value={sameDay ? "P0D" : within}
            onTake={(next) => change({ within: next })}
          />
        ),
        blocks: () => (
          <ChoiceEdit
            label={iv("l.blocks")}
            choices={[
              { value: "yes", label: iv("s.blocks") },
              { value: "no", label: iv("s.blocks-not") },
            ]}
            chosen={blocks ? "yes" : "no"}
            onChoose={(next) => change({ blocks: next === "yes" ? true : undefined })}
          />
        ),
      }}
    >
      <OpenBlank id="after">{anyOf(after.map((one) => iv(`event.${one}`)))}</OpenBlank>
      {`, ${iv("s.after-within")} `}
      <OpenBlank id="within">{sameDay ? iv("s.same-day") : durationWords(t, within)}</OpenBlank>
      {"; "}
      <OpenBlank id="blocks">{iv(blocks ? "s.blocks" : "s.blocks-not")}</OpenBlank>
    </Line>
  );
};
