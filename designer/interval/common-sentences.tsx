import { durationWords, useMessages } from "@roundbook/runner/form";
import type { IntervalRule } from "@roundbook/schemas";
import { ChoiceEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { useInterval, useRule } from "./interval-desk.tsx";
import { Line, MarginEdit } from "./line.tsx";

const DAY_OFF = ["roll-back", "roll-forward", "due-anyway"] as const;
const CLOSED = ["roll-back", "bring-forward", "due-anyway", "on-reopening", "excused"] as const;

/** What every kind of interval may say: its longest time, its first date, days off, closed sites. */
export const CommonSentences = ({ rule }: { readonly rule: IntervalRule }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  const { neverAfter, first, onDayOff = "roll-back", whenClosed = "roll-back" } = rule;
  return (
    <>
      <Line
        name="never"
        verb={iv("verb.never")}
        editors={{
          never: () => (
            <MarginEdit
              label={iv("l.never")}
              value={neverAfter}
              onTake={(next) => change({ neverAfter: next })}
            />
          ),
        }}
      >
        <OpenBlank id="never">
          {neverAfter === undefined
            ? iv("s.never-none")
            : iv("s.never", { length: durationWords(t, neverAfter) })}
        </OpenBlank>
      </Line>
      <Line
        name="first"
        verb={iv("verb.first")}
        editors={{
          first: () => (
            <MarginEdit
              label={iv("l.first")}
              value={first}
              onTake={(next) => change({ first: next })}
            />
          ),
        }}
      >
        <OpenBlank id="first">
          {first === undefined
            ? iv("s.first-none")
            : iv("s.first", { length: durationWords(t, first) })}
        </OpenBlank>
      </Line>
      <Line
        name="on"
        verb={iv("verb.on")}
        editors={{
          onDayOff: () => (
            <ChoiceEdit
              label={iv("l.on")}
              choices={DAY_OFF.map((value) => ({ value, label: iv(`dayoff.${value}`) }))}
              chosen={onDayOff}
              onChoose={(next) => change({ onDayOff: next })}
            />
          ),
        }}
      >
        {`${iv("s.days-off")} `}
        <OpenBlank id="onDayOff">{iv(`dayoff.${onDayOff}`)}</OpenBlank>
      </Line>
      <Line
        name="closed"
        verb={iv("verb.closed")}
        editors={{
          whenClosed: () => (
            <ChoiceEdit
              label={iv("l.closed")}
              choices={CLOSED.map((value) => ({ value, label: iv(`closed.${value}`) }))}
              chosen={whenClosed}
              onChoose={(next) => change({ whenClosed: next })}
            />
          ),
        }}
      >
        {`${iv("s.sites")} `}
        <OpenBlank id="whenClosed">{iv(`closed.${whenClosed}`)}</OpenBlank>
      </Line>
    </>
  );
};

/** The document or practice behind it. */
export const BasisSentence = () => {
  const { draft, apply } = useInterval();
  return (
    <Line
      name="because"
      verb={iv("verb.because")}
      editors={{
        basis: () => (
          <TextEdit
            label={iv("l.because")}
            value={draft.basis ?? ""}
            onTake={(text) => {
              const { basis: _, ...rest } = draft;
              apply(text.trim() === "" ? rest : { ...rest, basis: text.trim() });
              return undefined;
            }}
          />
        ),
      }}
    >
      <OpenBlank id="basis" label={draft.basis ? undefined : iv("l.because")}>
        {draft.basis ?? iv("s.basis-none")}
      </OpenBlank>
    </Line>
  );
};
