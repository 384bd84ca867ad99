import type { ReactNode } from "react";
import { MarginNumber, NumberAbove, numberPlace, rowClass } from "./row-number.tsx";
import { Target, type TargetProps } from "./target.tsx";

export interface RowProps extends TargetProps {
  readonly number?: string;
  readonly name: ReactNode;
  readonly second?: ReactNode;
  /** Further lines under the second: an open defect, the defect's steps. */
  readonly more?: ReactNode;
  /** The last result, one or two lines; printed on a desktop only. */
  readonly last?: readonly ReactNode[];
  readonly due?: ReactNode;
}

/** The list that rows, entries and gaps stand in. */
export function Rows({
  label,
  children,
}: {
  readonly label?: string;
  readonly children: ReactNode;
}) {
  return (
    <ul className="rows" aria-label={label}>
      {children}
    </ul>
  );
}

export function Row({ number, name, second, more, last, due, ...target }: RowProps) {
  const place = numberPlace(number, 17);
  return (
    <li className="row">
      <Target {...target} className={rowClass(place)}>
        <MarginNumber number={number} place={place} />
        <span className="row-words">
          <NumberAbove number={number} place={place} />
          <span className="row-name">{name}</span>
          {second !== undefined && <span className="row-second">{second}</span>}
        </span>
        {last !== undefined && (
          <span className="row-last">
            {last.map((line, at) => (
              <span key={at}>{line}</span>
            ))}
          </span>
        )}
        {due !== undefined && <span className="row-due">{due}</span>}
        {more !== undefined && <span className="row-more">{more}</span>}
      </Target>
    </li>
  );
}
