import { durationWords, printNumber, printUnit, useMessages } from "@roundbook/runner/form";
import type { RuleOf } from "@roundbook/schemas";
import { ChoiceEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { readNumber } from "../model/read-number.ts";
import { useRule } from "./interval-desk.tsx";
import { LengthEdit, Line, MarginEdit } from "./line.tsx";

type Margined = RuleOf<"from-last-done" | "by-result" | "recurrence" | "by-risk">;

interface Margins {
  readonly early?: unknown;
  readonly late?: unknown;
}

/** "from 7 days before to", "from the day itself to", or "from the day itself and" not after it. */
const joint = ({ early, late }: Margins): string => {
  if (early !== undefined) return iv("s.before-to");
  return iv(late === undefined ? "s.and" : "s.to");
};

const lastWords = ({ early }: Margins): string =>
  iv(early === undefined ? "s.not-after" : "s.itself");

/** "from 7 days before to the day itself". */
export const Window = ({ rule }: { readonly rule: Margined }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  return (
    <Line
      name="window"
      verb={iv("verb.window")}
      editors={{
        early: () => (
          <MarginEdit
            label={iv("l.early")}
            value={rule.early}
            onTake={(early) => change({ early })}
          />
        ),
        late: () => (
          <MarginEdit label={iv("l.late")} value={rule.late} onTake={(late) => change({ late })} />
        ),
      }}
    >
      {`${iv("s.from")} `}
      <OpenBlank id="early">
        {rule.early === undefined ? iv("s.itself") : durationWords(t, rule.early)}
      </OpenBlank>
      {` ${joint(rule)} `}
      <OpenBlank id="late">
        {rule.late === undefined
          ? lastWords(rule)
          : iv("s.late", { late: durationWords(t, rule.late) })}
      </OpenBlank>
    </Line>
  );
};

/** The window of a day that is kept, and what being late does to it. */
export const YearlyWindow = ({ rule }: { readonly rule: RuleOf<"anniversary"> }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  const { within, late, afterLate } = rule;
  return (
    <Line
      name="window"
      verb={iv("verb.window")}
      editors={{
        within: () => (
          <LengthEdit
            label={iv("l.within")}
            value={within}
            onTake={(next) => change({ within: next })}
          />
        ),
        late: () => (
          <MarginEdit label={iv("l.late")} value={late} onTake={(next) => change({ late: next })} />
        ),
        afterLate: () => (
          <ChoiceEdit
            label={iv("l.after-late")}
            choices={(["restart", "keep"] as const).map((value) => ({
              value,
              label: iv(`s.late-${value}`),
            }))}
            chosen={afterLate}
            onChoose={(next) => change({ afterLate: next })}
          />
        ),
      }}
    >
      {`${iv("s.from")} `}
      <OpenBlank id="within">{durationWords(t, within)}</OpenBlank>
      {` ${iv("s.before-to")} `}
      <OpenBlank id="late">
        {late === undefined ? iv("s.itself") : iv("s.late", { late: durationWords(t, late) })}
      </OpenBlank>
      {`; ${iv("s.done-late")} `}
      <OpenBlank id="afterLate">{iv(`s.late-${afterLate}`)}</OpenBlank>
    </Line>
  );
};

/** The window of an interval by use, in its unit. */
export const UsageWindow = ({ rule }: { readonly rule: RuleOf<"on-usage"> }) => {
  const change = useRule(rule);
  const amount = (name: "early" | "late") => () => (
    <TextEdit
      label={iv(`l.amount-${name}`)}
      value={rule[name] === undefined ? "" : String(rule[name])}
      onTake={(text) => {
        const read = text.trim() === "" ? undefined : readNumber(text);
        if (text.trim() !== "" && !(read !== undefined && read > 0)) return iv("w.amount-or-none");
        change({ [name]: read });
        return undefined;
      }}
    />
  );
  const words = (value: number) => `${printNumber(value)} ${printUnit(rule.unit)}`.trim();
  return (
    <Line
      name="window"
      verb={iv("verb.window")}
      editors={{ early: amount("early"), late: amount("late") }}
    >
      {`${iv("s.from")} `}
      <OpenBlank id="early">
        {rule.early === undefined ? iv("s.itself") : words(rule.early)}
      </OpenBlank>
      {` ${joint(rule)} `}
      <OpenBlank id="late">
        {rule.late === undefined ? lastWords(rule) : iv("s.late", { late: words(rule.late) })}
      </OpenBlank>
    </Line>
  );
};

/** What may be done before a reopening that is known. */
export const EarlyEvent = ({ rule }: { readonly rule: RuleOf<"on-event"> }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  return (
    <Line
      name="window"
      verb={iv("verb.window")}
      editors={{
        early: () => (
          <MarginEdit
            label={iv("l.early-event")}
            value={rule.early}
            onTake={(early) => change({ early })}
          />
        ),
      }}
    >
      <OpenBlank id="early">
        {rule.early === undefined ? iv("s.not-early") : durationWords(t, rule.early)}
      </OpenBlank>
      {` ${iv("s.early-reopening")}`}
    </Line>
  );
};
