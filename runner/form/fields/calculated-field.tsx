import { printWorking } from "../look/print-unit.ts";
import { Equation } from "../look/reading-box.tsx";
import { useMessages } from "../messages/messages.tsx";
import { useTitled } from "../messages/titled.tsx";
import { valueWords } from "../model/answer-words.ts";
import type { FieldProps } from "./field.ts";
import { LimitPicture } from "./limit-picture.tsx";
import { quantityOf } from "./reading-entry.ts";

/** A value worked out from other answers: printed in ink, as nobody wrote it. */
export function CalculatedField({ point, judgement, limits, last }: FieldProps) {
  const { t } = useMessages();
  const titled = useTitled();
  const value = judgement?.value;
  const quantity = quantityOf(point);
  return (
    <>
      {value === undefined ? (
        <p>{judgement ? titled(judgement.why) : null}</p>
      ) : (
        <output className="worked-out">{valueWords(point, value)}</output>
      )}
      {judgement?.working !== undefined && value !== undefined && (
        <Equation>{t("calculated.working", { working: printWorking(judgement.working) })}</Equation>
      )}
      <LimitPicture
        quantity={quantity}
        judgement={judgement}
        limits={limits}
        reading={value === undefined ? undefined : { value, unit: quantity.unit }}
        last={last}
        silent={value === undefined}
        printed
      />
    </>
  );
}
