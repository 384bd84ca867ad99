import type { ReactNode } from "react";
import { classes } from "./classes.ts";

export interface PadFoot {
  readonly label: ReactNode;
  readonly onPress: () => void;
  readonly disabled?: boolean;
}

/** "Not measured…" and "Next" below the keys; they change sides for the left hand. */
export function PadFeet({
  secondary,
  primary,
  leftHanded,
}: {
  readonly secondary?: PadFoot;
  readonly primary: PadFoot;
  readonly leftHanded?: boolean;
}) {
  return (
    <div className={classes("pad-feet", leftHanded && "pad-feet-left")}>
      {secondary && (
        <button type="button" onClick={secondary.onPress} disabled={secondary.disabled}>
          {secondary.label}
        </button>
      )}
      <button
        type="button"
        className="pad-next"
        onClick={primary.onPress}
        disabled={primary.disabled}
      >
        {primary.label}
      </button>
    </div>
  );
}
