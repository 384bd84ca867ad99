import type { ReactNode } from "react";
import { classes } from "./classes.ts";
import { widerThanMargin } from "./margin-number.ts";
import { Target, type TargetProps } from "./target.tsx";

export interface EntryProps extends TargetProps {
  /** The entry's number, thousands already spaced. */
  readonly number: string;
  readonly title: ReactNode;
  readonly words?: ReactNode;
  /** When it happened and was received, then who: one part a line on a desktop, else one line. */
  readonly when: readonly ReactNode[];
  readonly verdict?: ReactNode;
}

export function Entry({ number, title, words, when, verdict, ...target }: EntryProps) {
  const parts = when.map((part, at) => <span key={at}>{part}</span>);
  const wide = widerThanMargin(number, 15);
  return (
    <li className="row entry">
      <Target {...target} className={classes("row-target", wide && "row-wide-number") ?? ""}>
        <span className="row-number">{number}</span>
        <span className="row-words">
          <span className="row-name">{title}</span>
          {words !== undefined && <span className="row-second">{words}</span>}
          <span className="row-second entry-when">{parts}</span>
        </span>
        <span className="row-last">{parts}</span>
        {verdict !== undefined && <span className="row-due">{verdict}</span>}
      </Target>
    </li>
  );
}

/** A hatched row that says what is missing and why. */
export function Gap({ children }: { readonly children: ReactNode }) {
  return (
    <li className="gap">
      <span>{children}</span>
    </li>
  );
}
