import type { ReactNode } from "react";
import { MarginNumber, NumberAbove, numberPlace, rowClass } from "./row-number.tsx";
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
  const place = numberPlace(number, 15);
  return (
    <li className="row entry">
      <Target {...target} className={rowClass(place)}>
        <MarginNumber number={number} place={place} />
        <span className="row-words">
          <NumberAbove number={number} place={place} />
          <span className="row-name">{title}</span>
        </span>
        {verdict !== undefined && <span className="row-due">{verdict}</span>}
        <span className="row-more">
          {words !== undefined && <span className="row-second">{words}</span>}
          <span className="row-second entry-when">{parts}</span>
        </span>
        <span className="row-last">{parts}</span>
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
