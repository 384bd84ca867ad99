import { type DueDays, dotBetween, dueState } from "./due-state.ts";
import { Bar, Diamond, Dot, Ring } from "./strokes.tsx";

/** Today against its window: bars are the earliest and latest day, the dot is today. 72 × 14 px. */
export function DueMark(days: DueDays) {
  return (
    <svg className="due-mark" width="72" height="14" viewBox="0 0 72 14" aria-hidden="true">
      <Drawing {...days} />
    </svg>
  );
}

function Drawing(days: DueDays) {
  const state = dueState(days);
  switch (state) {
    case "not-yet":
      return (
        <>
          <Thread from={12} to={26} dotted />
          <Thread from={26} to={66} />
          <Bar x={26} />
          <Bar x={66} />
          <Ring x={8} y={7} />
        </>
      );
    case "in-window":
      return (
        <>
          <Thread from={6} to={66} />
          <Bar x={6} />
          <Bar x={66} />
          <Dot x={dotBetween(days)} y={7} r={4.2} />
        </>
      );
    case "last-day":
      return (
        <>
          <Thread from={6} to={64} />
          <Bar x={6} />
          <Bar x={64} />
          <Dot x={64} y={7} r={5.4} />
        </>
      );
    case "over":
      return (
        <>
          <Thread from={6} to={40} />
          <Thread from={40} to={60} dotted />
          <Bar x={6} />
          <Bar x={40} />
          <Diamond x={62} y={7} r={5.8} ink="var(--fail)" />
        </>
      );
    case "undecided":
      return (
        <>
          <Bar x={6} unsure ink="var(--edge)" />
          <Bar x={66} unsure ink="var(--edge)" />
          <Ring x={36} y={7} />
        </>
      );
  }
}

function Thread({ from, to, dotted }: { from: number; to: number; dotted?: boolean }) {
  return (
    <line
      x1={from}
      x2={to}
      y1={7}
      y2={7}
      stroke="var(--edge)"
      strokeWidth={1.5}
      strokeDasharray={dotted ? "2 2" : undefined}
    />
  );
}
