import { useMemo } from "react";
import { Pad } from "../look/pad.tsx";
import { PadFeet } from "../look/pad-feet.tsx";
import { useMessages } from "../messages/messages.tsx";
import { type PadKey, pressKey } from "../model/reading-text.ts";
import { Doubt } from "./doubt.tsx";
import type { FieldDockProps } from "./field.ts";
import { asksNow, currentBox, keepAsIs, otherUnit, write } from "./reading-entry.ts";
import { useWaited } from "./use-waited.ts";

export function ReadingPad(props: FieldDockProps) {
  const { point, draft, onDraft, ahead, onAbsent, leftHanded } = props;
  const { t } = useMessages();
  const names = useMemo(
    () => ({
      pad: t("reading.pad"),
      less: t("reading.below-sign"),
      more: t("reading.above-sign"),
      minus: t("reading.minus"),
      decimal: t("reading.point"),
      delete: t("reading.delete"),
    }),
    [t],
  );
  const waited = useWaited(props);
  const box = currentBox(point, draft);
  const other = otherUnit(point, box.unit);
  const feet = {
    secondary: { label: t("reading.not-measured"), onPress: onAbsent },
    primary: { label: ahead.label, onPress: ahead.go },
    leftHanded,
  };
  // Keys that write into a closed box would be a trap.
  if (waited !== undefined && !waited.open && box.text === "") return <PadFeet {...feet} />;
  return (
    <Pad
      decimal="."
      onKey={(key) => write(props, { text: pressKey(box.text, key as PadKey) })}
      names={names}
      otherUnit={
        other === undefined
          ? undefined
          : {
              label: t("reading.unit", { unit: other }),
              onPress: () => write(props, { unit: other }),
            }
      }
      {...feet}
      question={
        asksNow(point, box) ? (
          <Doubt
            {...{ point, box }}
            onKeep={() => onDraft(keepAsIs(point, draft))}
            onChange={() => write(props, { text: "" })}
          />
        ) : undefined
      }
    />
  );
}
