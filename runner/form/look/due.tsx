import type { ReactNode } from "react";
import { classes } from "./classes.ts";
import { DueMark } from "./due-mark.tsx";
import { type DueDays, type DueState, dueState } from "./due-state.ts";

/** When it is due, in words: bold only on the last day and past it. */
export function DueText({
  state,
  children,
}: {
  readonly state: DueState;
  readonly children: ReactNode;
}) {
  return <span className={`due-text due-${state}`}>{children}</span>;
}

/** The words over the mark, as they stand at the right of a row. */
export function Due({
  below,
  children,
  ...days
}: DueDays & { readonly below?: ReactNode; readonly children: ReactNode }) {
  return (
    <span className="due">
      <DueText state={dueState(days)}>{children}</DueText>
      <DueMark {...days} />
      {below !== undefined && <span className="due-below">{below}</span>}
    </span>
  );
}

/** Must not be used until it is done: the heaviest thing in the column. */
export function Stop({ children }: { readonly children: ReactNode }) {
  return <strong className="due-stop">{children}</strong>;
}

/** A standing without a window: "in store / since 2 June", "3 months / seen twice". */
export function Standing({
  strong,
  below,
  children,
}: {
  readonly strong?: boolean;
  readonly below?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <span className="due">
      <span className={classes("due-text", strong && "due-strong")}>{children}</span>
      {below !== undefined && <span className="due-below">{below}</span>}
    </span>
  );
}
