import {
  ABSENCE_REASONS,
  type AbsenceReason,
  type Absent,
  type Answer,
  isAbsent,
} from "@roundbook/schemas";
import { useState } from "react";
import { Button, Buttons } from "./look/button.tsx";
import { ChoiceList } from "./look/choice-list.tsx";
import { AreaField } from "./look/line-field.tsx";
import { LeafWords } from "./look/margin-block.tsx";
import { Sheet } from "./look/sheet.tsx";
import { useMessages } from "./messages/messages.tsx";
import type { FormPoint } from "./model/sections.ts";

export interface AbsenceSheetProps {
  readonly point: FormPoint;
  readonly answer: Answer | undefined;
  onWrite(answer: Absent): void;
  onClose(): void;
}

/** Why a point has no answer: the reasons it allows first, the others marked as leaving it undecided. */
export function AbsenceSheet({ point, answer, onWrite, onClose }: AbsenceSheetProps) {
  const { t } = useMessages();
  const before = isAbsent(answer) ? answer.absent : undefined;
  const [reason, setReason] = useState<AbsenceReason | null>(before?.reason ?? null);
  const [note, setNote] = useState(typeof before?.note === "string" ? before.note : "");

  const allowed = point.definition.ask?.absentAllowed ?? [];
  const isAllowed = (one: AbsenceReason) => allowed.includes(one);
  const reasons = [
    ...ABSENCE_REASONS.filter(isAllowed),
    ...ABSENCE_REASONS.filter((one) => !isAllowed(one)),
  ];
  const write = () => {
    if (reason !== null)
      onWrite({ absent: note.trim() === "" ? { reason } : { reason, note: note.trim() } });
  };

  return (
    <Sheet
      number={point.number}
      title={t("absent.title")}
      second={t("absent.about")}
      close={t("form.close")}
      onClose={onClose}
    >
      <ChoiceList
        label={t("absent.reason")}
        labelUnseen
        choices={reasons.map((value) => ({
          value,
          label: t(`absent.${value}`),
          aside: isAllowed(value) ? undefined : t("absent.uncounted"),
        }))}
        chosen={reason}
        onChoose={setReason}
      />
      <LeafWords>
        <AreaField
          label={t("absent.note")}
          value={note}
          maxLength={4000}
          onChange={({ target }) => setNote(target.value)}
        />
      </LeafWords>
      <Buttons>
        <Button kind="primary" disabled={reason === null} onClick={write}>
          {t("absent.write")}
        </Button>
      </Buttons>
    </Sheet>
  );
}
