import type { ReactNode } from "react";

export interface FoldedRowProps {
  /** In the margin: "3 done". */
  readonly margin: string;
  readonly summary: ReactNode;
  /** "Show" or "Hide", as it stands now. */
  readonly action: string;
  readonly open: boolean;
  readonly onToggle: () => void;
  /** The rows themselves, printed after the line when open. */
  readonly children?: ReactNode;
}

/** The finished rows of a place in one line. */
export function FoldedRow({ margin, summary, action, open, onToggle, children }: FoldedRowProps) {
  return (
    <>
      <li className="row row-folded">
        <button type="button" className="row-target" aria-expanded={open} onClick={onToggle}>
          <span className="row-margin-word">{margin}</span>
          <span className="row-words row-second">{summary}</span>
          <span className="row-due row-fold-word">
            <span>{action}</span>
          </span>
        </button>
      </li>
      {open && children}
    </>
  );
}
