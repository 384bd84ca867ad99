import { isReading } from "@roundbook/schemas";
import { printUnit } from "../look/print-unit.ts";
import { ClosedReadingBox } from "../look/reading-box.tsx";
import { useMessages } from "../messages/messages.tsx";
import { noteOf, withNote } from "../model/note.ts";
import { clockFigures } from "../model/wait.ts";
import type { FieldProps } from "./field.ts";
import { LimitPicture } from "./limit-picture.tsx";
import { currentBox, eraseBox, quantityOf } from "./reading-entry.ts";
import { ReadingInput } from "./reading-input.tsx";
import { useWaited } from "./use-waited.ts";
import { WaitClock } from "./wait-clock.tsx";

export function ReadingField(props: FieldProps) {
  const { point, answer, judgement, limits, last } = props;
  return (
    <>
      <TimedInput {...props} label={point.title} />
      <LimitPicture
        quantity={point.definition.quantity}
        judgement={judgement}
        limits={limits}
        reading={isReading(answer) ? answer : undefined}
        last={last}
      />
    </>
  );
}

/** The box, behind its clock where the point asks for a wait: closed until it is time. */
export function TimedInput(props: FieldProps & { readonly label: string }) {
  const { point, draft, wait, now } = props;
  const { t } = useMessages();
  const waited = useWaited(props);
  const start = () => {
    props.onWait({ startedAt: now() });
    eraseBox(props);
  };
  const read = () => wait && props.onWait({ ...wait, readAt: now() });
  const readEarly = (why: string) => {
    read();
    if (why.trim() !== "") props.onEvidence(withNote(props.items, why));
  };
  const written = currentBox(point, draft).text !== "";
  return (
    <>
      {waited && (
        <WaitClock
          waited={waited}
          note={noteOf(props.items)}
          onStart={start}
          onRead={read}
          onReadEarly={readEarly}
        />
      )}
      {waited === undefined || waited.open || written ? (
        <ReadingInput {...props} />
      ) : (
        <ClosedReadingBox
          opens={
            waited.wait === undefined
              ? t("wait.closed")
              : t("wait.opens", { at: clockFigures(waited.rule.atLeast ?? 0) })
          }
          unit={printUnit(quantityOf(point).unit)}
        />
      )}
    </>
  );
}
