import type { ReactNode } from "react";
import { classes } from "./classes.ts";
import { type Follow, followWith } from "./follow.ts";
import { useFootHeight } from "./foot-height.ts";

export interface ContentsEntry {
  readonly href: string;
  readonly word: string;
  /** Printed after the dotted leader on a desktop; already formatted. */
  readonly count?: string;
  readonly current?: boolean;
}

export interface ContentsProps {
  readonly label: string;
  readonly brand: string;
  readonly beneath?: ReactNode;
  readonly entries: readonly ContentsEntry[];
  /** Who is signed in, at the foot of the desktop list. */
  readonly foot?: ReactNode;
  readonly onFollow?: Follow;
}

/** A docked line of words on a phone, a list with dotted leaders at the left of a desktop. */
export function Contents({ label, brand, beneath, entries, foot, onFollow }: ContentsProps) {
  const ref = useFootHeight("--contents-height", "(max-width: 899.98px) and (min-height: 401px)");
  return (
    <nav
      className={classes("contents", entries.length > 5 && "contents-six")}
      aria-label={label}
      ref={ref}
    >
      <div className="contents-head">
        <strong>{brand}</strong>
        {beneath}
      </div>
      <ul>
        {entries.map((entry) => (
          <li key={entry.href}>
            <a
              href={entry.href}
              aria-current={entry.current ? "page" : undefined}
              onClick={followWith(entry.href, onFollow)}
            >
              {entry.word}
              {entry.count !== undefined && (
                <>
                  <span className="contents-leader" />
                  <span className="contents-count">{entry.count}</span>
                </>
              )}
            </a>
          </li>
        ))}
      </ul>
      {foot !== undefined && <div className="contents-foot">{foot}</div>}
    </nav>
  );
}
