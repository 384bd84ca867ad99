import type { ReactNode } from "react";

export interface TimerProps {
  /** Whole seconds gone by, and the whole wait. */
  readonly elapsed: number;
  readonly total: number;
  /** "0:42", as printed. */
  readonly figures: string;
  /** "of 1:00, since 11:06:18" */
  readonly caption: ReactNode;
  readonly label: string;
}

const perLine = 60;
const lineHeight = 28;

/** A stroke a second, a line a minute; the seconds gone by are the person's, so in hand. */
export function Timer({ elapsed, total, figures, caption, label }: TimerProps) {
  const seconds = Math.max(1, Math.round(total));
  const lines = Math.ceil(seconds / perLine);
  return (
    <div className="timer">
      <div className="timer-figures" role="timer" aria-label={label}>
        <strong>{figures}</strong>
        <span className="second">{caption}</span>
      </div>
      <svg viewBox={`0 0 300 ${lines * lineHeight}`} aria-hidden="true">
        {Array.from({ length: seconds }, (_, second) => {
          const x = (second % perLine) * 5 + 2.5;
          const foot = Math.floor(second / perLine) * lineHeight + 24;
          const done = second < elapsed;
          const height = done ? 22 : (second + 1) % 10 === 0 ? 14 : 10;
          return (
            <line
              key={`${x} ${foot}`}
              x1={x}
              x2={x}
              y1={foot - height}
              y2={foot}
              stroke={done ? "var(--hand)" : "var(--edge)"}
              strokeWidth={done ? 3 : 1.6}
            />
          );
        })}
      </svg>
    </div>
  );
}
