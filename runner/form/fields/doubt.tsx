import { printQuantity } from "../look/print-unit.ts";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { usualRange } from "../messages/usual-range.ts";
import type { FormPoint } from "../model/sections.ts";
import type { Box } from "./field.ts";
import { asksNow, quantityOf, readingOf } from "./reading-entry.ts";

/** "531 °C? Usual is 0 to 100." with *Keep* and *Change*; nothing while nothing is asked. */
export function Doubt({
  point,
  box,
  onKeep,
  onChange,
}: {
  readonly point: FormPoint;
  readonly box: Box;
  onKeep(): void;
  onChange(): void;
}) {
  const { t } = useMessages();
  const reading = readingOf(box);
  if (reading === undefined || !asksNow(point, box)) return null;
  return (
    <>
      <strong>
        {t("reading.usual", {
          value: printQuantity(reading.value, reading.unit),
          range: usualRange(t, quantityOf(point)),
        })}
      </strong>
      <WordList>
        <WordButton onClick={onKeep}>{t("reading.keep")}</WordButton>
        <WordButton onClick={onChange}>{t("answer.change")}</WordButton>
      </WordList>
    </>
  );
}
