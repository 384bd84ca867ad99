import { Sentence } from "@roundbook/runner/form";
import type { GradeDefinition, PointDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import { changePoint } from "../model/commands.ts";
import { type EvidenceKind, failEvidence, withFailEvidence } from "../model/evidence-edit.ts";
import { gradeWords } from "../model/fact-words.ts";
import { ChoiceEdit, ManyEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

const withinDays = (grade: GradeDefinition | undefined): string =>
  /^P(\d+)D$/.exec(grade?.within ?? "")?.[1] ?? "";

/** What a fail means and what it asks for. */
export const ThenSentence = ({
  name,
  point,
}: {
  readonly name: string;
  readonly point: PointDefinition;
}) => {
  const { document, apply, setOpen } = useDesk();
  const id = (part: string) => `${name}/then/${part}`;
  const change = (next: (point: PointDefinition) => PointDefinition) =>
    apply(changePoint(document, name, next));
  const rules = point.ask?.evidence ?? [];
  const asked = failEvidence(rules);
  const setEvidence = (kinds: readonly EvidenceKind[]) =>
    change((one) => {
      const evidence = withFailEvidence(one.ask?.evidence ?? [], kinds);
      const { evidence: _, ...ask } = one.ask ?? {};
      return { ...one, ask: evidence.length > 0 ? { ...ask, evidence } : ask };
    });
  const opened = useOpened({
    [id("grade")]: () => (
      <ChoiceEdit
        label={e("l.grade")}
        choices={(["danger-now", "by-a-date", "observation"] as const).map((value) => ({
          value,
          label: f(`grade.${value}`),
        }))}
        chosen={point.grade?.means ?? null}
        onChoose={(means) => {
          change((one) => ({ ...one, grade: { means } }));
          if (means === "by-a-date") queueMicrotask(() => setOpen(id("within")));
        }}
      />
    ),
    [id("within")]: () => (
      <TextEdit
        label={e("l.within")}
        value={withinDays(point.grade)}
        onTake={(text) => {
          const days = /^\d{1,4}$/.test(text.trim()) ? Number(text.trim()) : null;
          if (days === null) return e("l.number-wrong");
          change((one) => ({ ...one, grade: { means: "by-a-date", within: `P${days}D` } }));
          return undefined;
        }}
      />
    ),
    [id("evidence")]: () => (
      <ManyEdit
        label={e("l.evidence")}
        choices={[
          { value: "photo", label: e("s.a-photo") },
          { value: "note", label: e("s.a-note") },
        ]}
        chosen={asked}
        onChange={setEvidence}
      />
    ),
  });
  const evidence =
    asked.length === 2
      ? e("s.a-photo-and-note")
      : asked[0] === "photo"
        ? e("s.a-photo")
        : asked[0] === "note"
          ? e("s.a-note")
          : e("s.no-evidence");
  return (
    <Sentence verb={e("verb.then")} opened={opened}>
      {e("s.a-fail-is")}{" "}
      <OpenBlank id={id("grade")}>
        {point.grade ? gradeWords(point.grade) : e("s.ungraded")}
      </OpenBlank>{" "}
      {e("s.asks-photo")} <OpenBlank id={id("evidence")}>{evidence}</OpenBlank>
    </Sentence>
  );
};
