import { durationWords, printNumber, printUnit, useMessages } from "@roundbook/runner/form";
import { pointKind, type RuleOf } from "@roundbook/schemas";
import { ChoiceEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { readNumber } from "../model/read-number.ts";
import { readUnit, UNITS_OFFERED } from "../model/read-unit.ts";
import { useChecklist, useInterval, useRule } from "./interval-desk.tsx";
import { Line, MarginEdit } from "./line.tsx";

/** "every 250 h of “Engine hours”, or 1 year after it was last done". */
export const UsageSentence = ({ rule }: { readonly rule: RuleOf<"on-usage"> }) => {
  const { t } = useMessages();
  const change = useRule(rule);
  const { draft, checklists } = useInterval();
  const own = rule.checklist === undefined;
  const read = useChecklist(rule.checklist ?? draft.checklist);
  const points = Object.entries(read?.document.properties ?? {}).filter(
    ([, point]) => pointKind(point) === "reading",
  );
  const title = read?.document.properties[rule.point]?.title;
  return (
    <Line
      name="every"
      verb={iv("verb.every")}
      editors={{
        amount: () => (
          <TextEdit
            label={iv("l.amount")}
            value={String(rule.every)}
            onTake={(text) => {
              const amount = readNumber(text);
              if (amount === undefined || amount <= 0) return iv("w.amount");
              change({ every: amount });
              return undefined;
            }}
          />
        ),
        unit: () => (
          <TextEdit
            label={iv("l.unit")}
            value={printUnit(rule.unit) || "1"}
            offered={UNITS_OFFERED}
            onTake={(text) => {
              const unit = readUnit(text);
              if (unit === undefined) return iv("w.unit", { unit: text.trim() });
              change({ unit });
              return undefined;
            }}
          />
        ),
        point: () =>
          points.length === 0 ? (
            <p className="second">{iv("no-readings")}</p>
          ) : (
            <ChoiceEdit
              label={iv("l.meter")}
              choices={points.map(([value, point]) => ({ value, label: point.title }))}
              chosen={rule.point}
              onChoose={(point) => {
                const unit = read?.document.properties[point]?.quantity?.unit ?? rule.unit;
                change({ point, unit });
              }}
            />
          ),
        meter: () => (
          <ChoiceEdit
            label={iv("l.meter-checklist")}
            choices={[
              { value: "", label: iv("s.own-checklist") },
              ...checklists
                .filter(({ id, status }) => status === "issued" && id !== draft.checklist)
                .map(({ id, document }) => ({ value: id, label: document.title })),
            ]}
            chosen={rule.checklist ?? ""}
            onChoose={(id) => change({ checklist: id === "" ? undefined : id, point: "" })}
          />
        ),
        orAfter: () => (
          <MarginEdit
            label={iv("l.or-after")}
            value={rule.orAfter}
            onTake={(orAfter) => change({ orAfter })}
          />
        ),
      }}
    >
      <OpenBlank id="amount">{printNumber(rule.every)}</OpenBlank>{" "}
      <OpenBlank id="unit">{printUnit(rule.unit) || "1"}</OpenBlank>
      {` ${iv("s.of")} `}
      <OpenBlank id="point">{title ?? (rule.point || iv("s.no-point"))}</OpenBlank>
      {`, ${iv("s.read-by")} `}
      <OpenBlank id="meter">
        {own ? iv("s.own-checklist") : (read?.document.title ?? rule.checklist)}
      </OpenBlank>
      {", "}
      <OpenBlank id="orAfter">
        {rule.orAfter === undefined
          ? iv("s.or-never")
          : iv("s.or-after", { length: durationWords(t, rule.orAfter) })}
      </OpenBlank>
    </Line>
  );
};
