import { printUnit } from "@roundbook/runner/form";
import { e } from "../messages/editor.ts";
import { readUnit, UNITS_OFFERED } from "../model/read-unit.ts";
import { TextEdit } from "./blanks.tsx";

/** A unit as people write it; an empty one is none. */
export const UnitEdit = ({
  value,
  needed,
  onTake,
}: {
  /** UCUM code. */
  readonly value: string | undefined;
  readonly needed?: boolean;
  readonly onTake: (unit: string | undefined) => void;
}) => (
  <TextEdit
    label={e("l.unit")}
    help={e("l.unit-help")}
    value={value === undefined ? "" : printUnit(value)}
    offered={UNITS_OFFERED}
    onTake={(text) => {
      const unit = readUnit(text);
      if (unit === undefined && (needed || text.trim() !== ""))
        return e("l.unit-unknown", { text: text.trim() });
      onTake(unit);
      return undefined;
    }}
  />
);
