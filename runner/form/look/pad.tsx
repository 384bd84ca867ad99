import { memo, type PointerEvent, type ReactNode, useCallback, useState } from "react";
import { classes } from "./classes.ts";
import { PadFeet, type PadFoot } from "./pad-feet.tsx";

export type PadKey = "0" | "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9" | Sign;
type Sign = "." | "," | "<" | ">" | "-" | "delete";

export interface PadProps {
  /** The decimal sign the locale writes; that is the key reported and the one in ink. */
  readonly decimal: "." | ",";
  readonly onKey: (key: PadKey) => void;
  /** Read out in place of the signs. */
  readonly names: {
    readonly pad: string;
    readonly less: string;
    readonly more: string;
    readonly minus: string;
    readonly decimal: string;
    readonly delete: string;
  };
  readonly otherUnit?: { readonly label: ReactNode; readonly onPress: () => void };
  readonly secondary?: PadFoot;
  readonly primary: PadFoot;
  /** A doubtful figure's question and its words, in a line above the keys. */
  readonly question?: ReactNode;
  readonly leftHanded?: boolean;
}

/** Keys take no focus, so the reading box keeps its caret while they are pressed. */
const keepFocus = (event: PointerEvent) => event.preventDefault();

export function Pad(props: PadProps) {
  const { decimal, onKey, names, otherUnit, secondary, primary, question, leftHanded } = props;
  const [latest] = useState({ onKey, onUnit: otherUnit?.onPress });
  Object.assign(latest, { onKey, onUnit: otherUnit?.onPress });
  const press = useCallback((key: PadKey) => latest.onKey(key), [latest]);
  const pressUnit = useCallback(() => latest.onUnit?.(), [latest]);
  return (
    <div className="pad-block">
      {question !== undefined && (
        <div className="pad-question" role="alert">
          {question}
        </div>
      )}
      <PadKeys {...{ decimal, names, leftHanded, press, pressUnit }} unit={otherUnit?.label} />
      <PadFeet secondary={secondary} primary={primary} leftHanded={leftHanded} />
    </div>
  );
}

interface PadKeysProps extends Pick<PadProps, "decimal" | "names" | "leftHanded"> {
  /** Absent where a reading has one unit only. */
  readonly unit: ReactNode;
  readonly press: (key: PadKey) => void;
  readonly pressUnit: () => void;
}

/** The keys stay as they are while figures are written: they are not drawn again for each. */
const PadKeys = memo(function PadKeys(props: PadKeysProps) {
  const { decimal, names, leftHanded, unit: unitLabel, press, pressUnit } = props;
  const point = (
    <>
      {decimal} <span>{decimal === "." ? "," : "."}</span>
    </>
  );
  const key = (sign: PadKey, label: ReactNode = sign, name?: string, kind?: string) => ({
    sign,
    label,
    name,
    kind,
  });
  const lines = [
    [key("1"), key("2"), key("3"), key("<", "<", names.less, "pad-side")],
    [key("4"), key("5"), key("6"), key(">", ">", names.more, "pad-side")],
    [key("7"), key("8"), key("9"), key("-", "−", names.minus, "pad-side")],
    [
      key(decimal, point, names.decimal, "pad-point"),
      key("0"),
      key("delete", <Delete />, names.delete),
    ],
  ];
  const unit = (
    <button
      key="unit"
      type="button"
      className={classes("pad-side", "pad-unit", leftHanded && "pad-edge")}
      onPointerDown={keepFocus}
      onClick={pressUnit}
      disabled={unitLabel === undefined}
      // A blank key is only the corner of the pad: there is nothing to read out.
      aria-hidden={unitLabel === undefined || undefined}
    >
      {unitLabel}
    </button>
  );
  return (
    // biome-ignore lint/a11y/useSemanticElements: the keys are no set of fields.
    <div className={classes("pad", leftHanded && "pad-left")} role="group" aria-label={names.pad}>
      {lines.map((line) => {
        const keys = line.map(({ sign, label, name, kind }) => (
          <button
            key={sign}
            type="button"
            className={classes(kind, isEdge(sign, decimal, leftHanded) && "pad-edge")}
            aria-label={name}
            onPointerDown={keepFocus}
            onClick={() => press(sign)}
          >
            {label}
          </button>
        ));
        const full = keys.length === 4 ? keys : [...keys, unit];
        return leftHanded ? [full[3], ...full.slice(0, 3)] : full;
      })}
    </div>
  );
});

function isEdge(sign: PadKey, decimal: string, leftHanded = false) {
  return (leftHanded ? ["<", ">", "-"] : ["1", "4", "7", decimal]).includes(sign);
}

function Delete() {
  return (
    <svg width="32" height="24" viewBox="0 0 32 24" aria-hidden="true">
      <path d="M2 3v18M31 12H9M16 5l-7 7 7 7" fill="none" stroke="currentColor" strokeWidth="2.8" />
    </svg>
  );
}
