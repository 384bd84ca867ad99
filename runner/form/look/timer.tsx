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

/** Seconds to a stroke: past five minutes a stroke is a minute, past five hours an hour. */
const strokeOf = (total: number): number => (total <= 300 ? 1 : total <= 18_000 ? 60 : 3600);

/** A stroke a second, a line a minute; the seconds gone by are the person's, so in hand. */
export function Timer({ elapsed, total, figures, caption, label }: TimerProps) {
  const stroke = strokeOf(total);
  const strokes = Math.max(1, Math.ceil(total / stroke));
  const lines = Math.ceil(strokes / perLine);
  return (
    <div className="timer">
      <div className="timer-figures" role="timer" aria-label={label}>
        <strong>{figures}</strong>
        <span className="second">{caption}</span>
      </div>
      <svg viewBox={`0 0 300 ${lines * lineHeight}`} aria-hidden="true">
        {Array.from({ length: strokes }, (_, place) => {
          const x = (place % perLine) * 5 + 2.5;
          const foot = Math.floor(place / perLine) * lineHeight + 24;
          const done = (place + 1) * stroke <= elapsed;
          const height = done ? 22 : (place + 1) % 10 === 0 ? 14 : 10;
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
