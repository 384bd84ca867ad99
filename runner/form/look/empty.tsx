import type { ReactNode } from "react";

/** What is so and until when, then what may be done. */
export function Empty({
  sentence,
  children,
  actions,
}: {
  readonly sentence: ReactNode;
  /** Paragraphs. */
  readonly children?: ReactNode;
  /** Word links or buttons. */
  readonly actions?: ReactNode;
}) {
  return (
    <div className="empty">
      <h2>{sentence}</h2>
      {children}
      {actions !== undefined && <div className="word-list">{actions}</div>}
    </div>
  );
}

/** Ruled rows while a page is fetched, their numbers first where they are known. */
export function Loading({
  label,
  rows = 6,
  numbers = [],
}: {
  readonly label: string;
  readonly rows?: number;
  readonly numbers?: readonly string[];
}) {
  return (
    <div className="loading" role="status" aria-busy="true">
      <span className="unseen">{label}</span>
      {Array.from({ length: Math.max(rows, numbers.length) }, (_, at) => (
        <div key={at} className="loading-row">
          <span>{numbers[at]}</span>
        </div>
      ))}
    </div>
  );
}
