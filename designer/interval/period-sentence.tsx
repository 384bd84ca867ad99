import type { RuleOf } from "@roundbook/schemas";
import { ChoiceEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { useRule } from "./interval-desk.tsx";
import { Line } from "./line.tsx";

const PERIODS = ["week", "month", "quarter", "half-year", "year"] as const;
const MOST = 366;

/** "each calendar month, due on its last day". */
export const PeriodSentence = ({ rule }: { readonly rule: RuleOf<"each-period"> }) => {
  const change = useRule(rule);
  const { period, day } = rule;
  return (
    <Line
      name="every"
      verb={iv("verb.each")}
      editors={{
        period: () => (
          <ChoiceEdit
            label={iv("l.period")}
            choices={PERIODS.map((value) => ({ value, label: iv(`s.period-${value}`) }))}
            chosen={period}
            onChoose={(next) => change({ period: next })}
          />
        ),
        day: () => (
          <TextEdit
            label={iv("l.period-day")}
            value={day === undefined ? "" : String(day)}
            onTake={(text) => {
              const read = text.trim() === "" ? undefined : Number(text);
              const fits = read === undefined || (Number.isInteger(read) && read >= 1);
              if (!fits || (read ?? 1) > MOST) return iv("w.day");
              change({ day: read });
              return undefined;
            }}
          />
        ),
      }}
    >
      <OpenBlank id="period">{iv(`s.period-${period}`)}</OpenBlank>
      {`, ${iv("s.due")} `}
      <OpenBlank id="day">
        {day === undefined ? iv("s.period-last") : iv("s.period-day", { day })}
      </OpenBlank>
    </Line>
  );
};
