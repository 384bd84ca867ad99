import { Pad } from "../look/pad.tsx";
import { printQuantity } from "../look/print-unit.ts";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { usualRange } from "../messages/usual-range.ts";
import { type PadKey, pressKey } from "../model/reading-text.ts";
import type { FieldDockProps } from "./field.ts";
import { asksNow, otherUnit, quantityOf, readingOf, write } from "./reading-entry.ts";

export function ReadingPad(props: FieldDockProps) {
  const { point, draft, onDraft, ahead, onAbsent, leftHanded } = props;
  const { t } = useMessages();
  const other = otherUnit(point, draft.unit);
  return (
    <Pad
      decimal="."
      onKey={(key) => write(props, { text: pressKey(draft.text, key as PadKey) })}
      names={{
        pad: t("reading.pad"),
        less: t("reading.below-sign"),
        more: t("reading.above-sign"),
        minus: t("reading.minus"),
        decimal: t("reading.point"),
        delete: t("reading.delete"),
      }}
      otherUnit={
        other === undefined
          ? undefined
          : {
              label: t("reading.unit", { unit: other }),
              onPress: () => write(props, { unit: other }),
            }
      }
      secondary={{ label: t("reading.not-measured"), onPress: onAbsent }}
      primary={{ label: ahead.label, onPress: ahead.go }}
      leftHanded={leftHanded}
      question={
        asksNow(point, draft) ? (
          <Doubt {...props} onKeep={() => onDraft({ ...draft, sure: true })} />
        ) : undefined
      }
    />
  );
}

function Doubt(props: FieldDockProps & { readonly onKeep: () => void }) {
  const { t } = useMessages();
  const reading = readingOf(props.draft);
  if (reading === undefined) return null;
  return (
    <>
      <strong>
        {t("reading.usual", {
          value: printQuantity(reading.value, reading.unit),
          range: usualRange(t, quantityOf(props.point)),
        })}
      </strong>
      <WordList>
        <WordButton onClick={props.onKeep}>{t("reading.keep")}</WordButton>
        <WordButton onClick={() => write(props, { text: "" })}>{t("answer.change")}</WordButton>
      </WordList>
    </>
  );
}
