import type { ReactNode } from "react";

export interface ProblemMarkProps {
  readonly number: number;
  /** Read out in place of the bare number: "Problem 2". */
  readonly label: string;
  readonly href?: string;
}

/** A numbered mark at the spot; with `href` it leads to its footnote. */
export function ProblemMark({ number, label, href }: ProblemMarkProps) {
  const face = (
    <>
      <span aria-hidden="true">{number}</span>
      <span className="unseen">{label}</span>
    </>
  );
  if (href === undefined) return <span className="problem-mark">{face}</span>;
  return (
    <a className="problem-mark" href={href}>
      {face}
    </a>
  );
}

export interface Footnote {
  readonly number: number;
  readonly id?: string;
  /** What is wrong, set bold. */
  readonly says: ReactNode;
  /** What would be right. */
  readonly right?: ReactNode;
  /** Words that lead there or put it right. */
  readonly actions?: ReactNode;
}

/** Problems as footnotes, for the dock of a page. */
export function Problems({
  label,
  footnotes,
}: {
  readonly label: string;
  readonly footnotes: readonly Footnote[];
}) {
  return (
    <ol className="problems" aria-label={label}>
      {footnotes.map((note) => (
        <li key={note.number} className="problem" id={note.id}>
          <span className="problem-number">{note.number}</span>
          <div>
            <strong>{note.says}</strong> {note.right} {note.actions}
          </div>
        </li>
      ))}
    </ol>
  );
}
