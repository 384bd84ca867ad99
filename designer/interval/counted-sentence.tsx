import { dateWords, durationWords, useMessages } from "@roundbook/runner/form";
import type { RuleOf } from "@roundbook/schemas";
import { ChoiceEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { useOpening } from "../editor/desk.tsx";
import { iv } from "../messages/intervals.ts";
import { asKind, type IntervalDraft, readDate } from "../model/interval-draft.ts";
import { useInterval } from "./interval-desk.tsx";
import { LengthEdit, Line } from "./line.tsx";

type Counted = RuleOf<"from-last-done"> | RuleOf<"anniversary">;
type Origin = "last-done" | "first-done" | "date";

const originOf = (rule: Counted): Origin => {
  if (rule.kind === "from-last-done") return "last-done";
  return rule.anchor === undefined ? "first-done" : "date";
};

/** "every 6 months, counted from the day it was last done". */
export const CountedSentence = ({ rule }: { readonly rule: Counted }) => {
  const { t } = useMessages();
  const { draft, apply, today } = useInterval();
  const { setOpen } = useOpening();
  const origin = originOf(rule);
  const anchor = rule.kind === "anniversary" ? rule.anchor : undefined;
  const setOrigin = (to: Origin) => {
    const kind = to === "last-done" ? "from-last-done" : "anniversary";
    const next: IntervalDraft = asKind(draft, kind, { today });
    if (next.rule.kind !== "anniversary") return apply(next);
    const { anchor: _, ...rest } = next.rule;
    apply({ ...next, rule: to === "date" ? { ...rest, anchor: anchor ?? today } : rest });
    if (to === "date") queueMicrotask(() => setOpen("anchor"));
  };
  const words = {
    "last-done": iv("s.last-done"),
    "first-done": iv("s.first-done"),
    date: anchor === undefined ? iv("l.anchor-choose") : dateWords(anchor),
  };
  return (
    <Line
      name="every"
      verb={iv("verb.every")}
      editors={{
        every: () => (
          <LengthEdit
            label={iv("l.every")}
            value={rule.every}
            onTake={(every) => apply({ ...draft, rule: { ...rule, every } })}
          />
        ),
        origin: () => (
          <ChoiceEdit
            label={iv("l.counted")}
            choices={(["last-done", "first-done", "date"] as const).map((value) => ({
              value,
              label: words[value],
            }))}
            chosen={origin}
            onChoose={setOrigin}
          />
        ),
        anchor: () => (
          <TextEdit
            label={iv("l.anchor")}
            value={anchor === undefined ? "" : dateWords(anchor)}
            onTake={(text) => {
              const read = readDate(text);
              if (read === undefined) return iv("w.date");
              if (rule.kind === "anniversary") apply({ ...draft, rule: { ...rule, anchor: read } });
              return undefined;
            }}
          />
        ),
      }}
    >
      <OpenBlank id="every">{durationWords(t, rule.every)}</OpenBlank>
      {`, ${iv("s.counted-from")} `}
      <OpenBlank id="origin">{words[origin]}</OpenBlank>
      {rule.kind === "anniversary" && ` ${iv("s.kept")}`}
    </Line>
  );
};
