import { english, Sentence } from "@roundbook/runner/form";
import { ABSENCE_REASONS, type AbsenceReason, type PointDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { changePoint } from "../model/commands.ts";
import { formulaWords } from "../model/formula-words.ts";
import { ChoiceEdit, ManyEdit, OpenBlank, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { FormulaEdit } from "./formula-edit.tsx";

const reason = (one: AbsenceReason): string => english.t(`absent.${one}`).toLowerCase();

/** When it is asked, whether it must be answered, and what excuses an answer. */
export const AskSentences = ({
  name,
  point,
}: {
  readonly name: string;
  readonly point: PointDefinition;
}) => {
  const { document, apply } = useDesk();
  const ask = point.ask ?? {};
  const id = (part: string) => `${name}/ask/${part}`;
  const change = (members: Partial<NonNullable<PointDefinition["ask"]>>) =>
    apply(changePoint(document, name, (one) => ({ ...one, ask: { ...one.ask, ...members } })));
  const opened = useOpened({
    [id("when")]: () => (
      <FormulaEdit
        wanted={{ condition: true }}
        label={e("l.when")}
        value={ask.when ?? ""}
        onTake={(text) => {
          change({ when: text.trim() === "" ? undefined : text.trim() });
          return undefined;
        }}
      />
    ),
    [id("mandatory")]: () => (
      <ChoiceEdit
        label={e("l.mandatory")}
        choices={[
          { value: "yes", label: e("s.must") },
          { value: "no", label: e("s.may") },
        ]}
        chosen={ask.mandatory ? "yes" : "no"}
        onChoose={(chosen) => change({ mandatory: chosen === "yes" })}
      />
    ),
    [id("absent")]: () => (
      <ManyEdit
        label={e("l.absent")}
        choices={ABSENCE_REASONS.map((value) => ({ value, label: reason(value) }))}
        chosen={ask.absentAllowed ?? []}
        onChange={(absentAllowed) =>
          change({ absentAllowed: absentAllowed.length > 0 ? absentAllowed : undefined })
        }
      />
    ),
  });
  const absent = (ask.absentAllowed ?? []).map(reason).join(", ");
  return (
    <Sentence verb={e("verb.when")} opened={opened}>
      <OpenBlank id={id("when")}>
        {ask.when ? formulaWords(document, ask.when) : e("s.always")}
      </OpenBlank>
      {`; ${e("s.it")} `}
      <OpenBlank id={id("mandatory")}>{e(ask.mandatory ? "s.must" : "s.may")}</OpenBlank>
      {", "}
      <OpenBlank id={id("absent")}>
        {absent === "" ? e("s.absent-none") : e("s.absent", { reasons: absent })}
      </OpenBlank>
    </Sentence>
  );
};
