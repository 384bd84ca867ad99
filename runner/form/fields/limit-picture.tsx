import {
  type LimitJudgement,
  type PointJudgement,
  parseCivilDate,
  type QuantityDefinition,
  type Reading,
} from "@roundbook/schemas";
import { LimitLine } from "../look/limit-line.tsx";
import { printNumber, printQuantity } from "../look/print-unit.ts";
import { shortDay } from "../messages/dates.ts";
import { useMessages } from "../messages/messages.tsx";
import { boundDecimals, limitDrawing } from "../model/limit-drawing.ts";
import type { LastReading } from "./field.ts";
import { LimitWords } from "./limit-words.tsx";

export interface LimitPictureProps {
  readonly quantity: QuantityDefinition | undefined;
  readonly judgement: PointJudgement | undefined;
  /** Without a reading the judgement has none: these are the ones that would apply. */
  readonly limits: readonly LimitJudgement[];
  readonly reading: Reading | undefined;
  readonly last?: LastReading;
  /** Only the limits, while there is nothing to say of what came out. */
  readonly silent?: boolean;
  /** Nothing lies below nought, as in a count: the line begins there. */
  readonly fromZero?: boolean;
  /** The figure was worked out, not written. */
  readonly printed?: boolean;
}

/** A reading against its limits, drawn and in words: line, equation, distance, basis. */
export function LimitPicture(props: LimitPictureProps) {
  const { quantity, judgement, limits, reading, last, silent, fromZero, printed } = props;
  const { t } = useMessages();
  if (judgement === undefined || quantity === undefined) return null;
  const drawing = limitDrawing(
    quantity,
    limits,
    judgement.verdict,
    reading,
    last && asReading(last),
    fromZero,
  );
  const bare = (at: number) => printNumber(at, { decimals: boundDecimals(at, quantity.decimals) });
  const bounds = (drawing?.bounds ?? []).map(({ at, side, kind }) => ({
    at,
    side,
    label: t(`limit.${kind}`, { bound: bare(at) }),
  }));
  const lastLabel = last && lastWords(t, last, quantity);
  const description = [...bounds.map(({ label }) => label), lastLabel].filter(Boolean).join(", ");
  return (
    <>
      {drawing && (
        <LimitLine
          description={description}
          range={drawing.range}
          ticks={drawing.ticks.map((at) => ({ at, label: printNumber(at) }))}
          bounds={bounds}
          now={drawing.now && { ...drawing.now, printed }}
          last={
            drawing.last !== undefined && lastLabel !== undefined
              ? { at: drawing.last, label: lastLabel }
              : undefined
          }
        />
      )}
      <LimitWords {...{ quantity, judgement, limits, silent }} all={reading === undefined} />
    </>
  );
}

const asReading = ({ value, unit }: LastReading): Reading => ({ value, unit });

/** "30 Apr: 0.198": the unit is left out where it is the point's own. */
function lastWords(
  t: ReturnType<typeof useMessages>["t"],
  last: LastReading,
  quantity: QuantityDefinition,
) {
  const comparator = last.comparator as Reading["comparator"];
  const decimals =
    last.unit === quantity.unit ? boundDecimals(last.value, quantity.decimals) : undefined;
  const value = printQuantity(last.value, last.unit === quantity.unit ? "1" : last.unit, {
    comparator,
    decimals,
  });
  const day = last.on === undefined ? undefined : parseCivilDate(last.on);
  return day === undefined
    ? t("reading.last-undated", { value })
    : t("reading.last", { day: shortDay(day), value });
}
