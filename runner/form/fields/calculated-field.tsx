import { useMessages } from "../messages/messages.tsx";
import { useFormulaWords, useTitled } from "../messages/titled.tsx";
import { valueWords } from "../model/answer-words.ts";
import type { FieldProps } from "./field.ts";
import { LimitPicture } from "./limit-picture.tsx";
import { quantityOf } from "./reading-entry.ts";

/** A value worked out from other answers: printed in ink, as nobody wrote it. */
export function CalculatedField({ point, judgement, limits, last }: FieldProps) {
  const { t } = useMessages();
  const titled = useTitled();
  const words = useFormulaWords();
  const value = judgement?.value;
  const quantity = quantityOf(point);
  return (
    <>
      {value === undefined ? (
        <p>{judgement ? titled(judgement.why) : null}</p>
      ) : (
        <output className="worked-out">{valueWords(point, value)}</output>
      )}
      <p className="second">
        {t("calculated.about", { formula: words(point.definition.calculate ?? "") })}
      </p>
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
