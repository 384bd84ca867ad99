import type { EvidenceItem, GradeDefinition, PointJudgement, Verdict } from "@roundbook/schemas";
import { useState } from "react";
import type { PhotoDoor } from "./fields/field.ts";
import { Photos } from "./fields/photos.tsx";
import { Button } from "./look/button.tsx";
import { AreaField } from "./look/line-field.tsx";
import { gradeSentence } from "./messages/grade-words.ts";
import { useMessages } from "./messages/messages.tsx";
import { type EvidenceDue, evidenceDue, isMissing } from "./model/evidence-due.ts";
import { noteOf, withNote } from "./model/note.ts";
import type { FormPoint } from "./model/sections.ts";

const MOST = 11;

export interface EvidenceAskProps {
  readonly point: FormPoint;
  readonly judgement: PointJudgement | undefined;
  readonly items: readonly EvidenceItem[];
  onChange(items: readonly EvidenceItem[]): void;
  readonly photos: PhotoDoor;
}

/** What a verdict asks for beside the answer, and ways to give it here. A fail always offers them. */
export function EvidenceAsk({ point, judgement, items, onChange, photos }: EvidenceAskProps) {
  const { t } = useMessages();
  const [writing, setWriting] = useState(false);
  const verdict = judgement?.verdict ?? null;
  const due = evidenceDue(point.definition, verdict, items);
  if (due.length === 0 && items.length === 0 && verdict !== "fail") return null;

  const note = noteOf(items);
  const shots = items.flatMap(({ kind, sha256 }) => (kind === "photo" && sha256 ? [sha256] : []));

  return (
    <div className="evidence">
      <Asks
        due={due}
        verdict={verdict}
        grade={verdict === "fail" ? point.definition.grade : undefined}
      />
      <Photos
        title={point.title}
        hashes={shots}
        most={MOST}
        door={photos}
        onAdd={(sha256) =>
          shots.includes(sha256) || onChange([...items, { kind: "photo", sha256 }])
        }
        onRemove={(sha256) => onChange(items.filter((item) => item.sha256 !== sha256))}
        beside={
          note === "" && !writing ? (
            <Button onClick={() => setWriting(true)}>{t("evidence.write")}</Button>
          ) : undefined
        }
      />
      {(note !== "" || writing) && (
        <AreaField
          label={t("evidence.note-label")}
          autoFocus={writing}
          value={note}
          maxLength={4000}
          onChange={({ target }) => onChange(withNote(items, target.value))}
        />
      )}
      <Missing due={due.filter(isMissing)} />
    </div>
  );
}

function Asks({
  due,
  verdict,
  grade,
}: {
  readonly due: readonly EvidenceDue[];
  readonly verdict: PointJudgement["verdict"];
  readonly grade: GradeDefinition | undefined;
}) {
  const { t } = useMessages();
  const wanted = due.map(({ kind }) => t(`evidence.${kind}`)).join(t("evidence.and"));
  return (
    <>
      {grade !== undefined && (
        <p>
          <strong>{gradeSentence(t, grade)}</strong>
        </p>
      )}
      {due.length > 0 && (
        <p>
          <strong>{t(`evidence.asks.${verdict as Verdict}`, { wanted })}</strong>
          {t("evidence.when")}
        </p>
      )}
    </>
  );
}

function Missing({ due }: { readonly due: readonly EvidenceDue[] }) {
  const { t } = useMessages();
  if (due.length === 0) return null;
  const words = due.map(({ kind, atLeast, given }) =>
    kind === "photo" ? t("evidence.photo-count", { given, atLeast }) : t("evidence.note-missing"),
  );
  return (
    <p className="danger" role="status">
      {words.join(", ")}.
    </p>
  );
}
