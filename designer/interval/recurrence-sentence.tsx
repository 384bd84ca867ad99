import {
  dateWords,
  onDayWords,
  type RruleForm,
  rruleForm,
  rruleText,
  WEEKDAYS,
  WordButton,
} from "@roundbook/runner/form";
import type { RuleOf } from "@roundbook/schemas";
import type { ReactNode } from "react";
import { ManyEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { useOpening } from "../editor/desk.tsx";
import { iv } from "../messages/intervals.ts";
import { readDate } from "../model/interval-draft.ts";
import {
  oftenWords,
  readOften,
  readOnDay,
  readYearDay,
  setOften,
  yearDayWords,
} from "../model/interval-rrule.ts";
import { useRule } from "./interval-desk.tsx";
import { Line } from "./line.tsx";

const DAYS = ["1", "2", "3", "4", "5", "6", "7"] as const;

/** "2 weeks on Monday, from 13 October 2026"; a rarer rule stands as it is written. */
export const RecurrenceSentence = ({ rule }: { readonly rule: RuleOf<"recurrence"> }) => {
  const change = useRule(rule);
  const { open, setOpen } = useOpening();
  const form = rruleForm(rule.rrule);
  const take = (next: RruleForm) => change({ rrule: rruleText(next) });
  const often = (
    <TextEdit
      label={iv("l.recur")}
      value={form ? oftenWords(form) : ""}
      onTake={(text) => {
        const read = readOften(text);
        if (read === undefined) return iv("w.recur");
        take(setOften(form, read, rule.start));
        return undefined;
      }}
    />
  );
  return (
    <Line
      name="every"
      verb={iv("verb.every")}
      editors={{
        often: () => often,
        on: () => form && <OnEdit form={form} onTake={take} />,
        start: () => (
          <TextEdit
            label={iv("l.start")}
            value={dateWords(rule.start)}
            onTake={(text) => {
              const read = readDate(text);
              if (read === undefined) return iv("w.date");
              change({ start: read });
              return undefined;
            }}
          />
        ),
        rrule: () => (
          <TextEdit
            mono
            label={iv("l.rrule")}
            value={rule.rrule}
            onTake={(text) => {
              const written = text.trim().replace(/^RRULE:/i, "");
              if (written === "") return iv("w.needed");
              change({ rrule: written });
              return undefined;
            }}
          />
        ),
      }}
    >
      {form ? (
        <>
          <OpenBlank id="often">{oftenWords(form)}</OpenBlank>
          {form.by !== "day" && (
            <>
              {` ${iv("s.on")} `}
              <OpenBlank id="on">{onWords(form)}</OpenBlank>
            </>
          )}
        </>
      ) : (
        <>
          {`${iv("s.rule")} `}
          <OpenBlank id="rrule">
            <span className="mono">{rule.rrule}</span>
          </OpenBlank>
        </>
      )}
      {`, ${iv("s.begins")} `}
      <OpenBlank id="start">{dateWords(rule.start)}</OpenBlank>{" "}
      {open !== "rrule" && (
        <WordButton quiet onClick={() => setOpen(form ? "rrule" : "often")}>
          {iv(form ? "l.rrule-open" : "l.in-words")}
        </WordButton>
      )}
    </Line>
  );
};

const onWords = (form: RruleForm): string => {
  switch (form.by) {
    case "day":
      return "";
    case "week":
      return form.days.length === 0
        ? iv("s.weekday-any")
        : form.days.map((day) => WEEKDAYS[day - 1]).join(", ");
    case "month":
      return onDayWords(form.on);
    case "year":
      return yearDayWords(form);
  }
};

const OnEdit = ({
  form,
  onTake,
}: {
  readonly form: RruleForm;
  readonly onTake: (form: RruleForm) => void;
}): ReactNode => {
  switch (form.by) {
    case "day":
      return null;
    case "week":
      return (
        <ManyEdit
          label={iv("l.weekdays")}
          choices={DAYS.map((value) => ({ value, label: WEEKDAYS[Number(value) - 1] ?? "" }))}
          chosen={form.days.map((day) => DAYS[day - 1] ?? "1")}
          onChange={(chosen) => onTake({ ...form, days: chosen.map(Number).toSorted() })}
        />
      );
    case "month":
      return (
        <TextEdit
          label={iv("l.month-day")}
          value={onDayWords(form.on)}
          onTake={(text) => {
            const on = readOnDay(text);
            if (on === undefined) return iv("w.on-day");
            onTake({ ...form, on });
            return undefined;
          }}
        />
      );
    case "year":
      return (
        <TextEdit
          label={iv("l.year-day")}
          value={yearDayWords(form)}
          onTake={(text) => {
            const read = readYearDay(text);
            if (read === undefined) return iv("w.on-year-day");
            onTake({ ...form, ...read });
            return undefined;
          }}
        />
      );
  }
};
