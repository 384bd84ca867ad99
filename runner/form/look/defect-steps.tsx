import type { ReactNode } from "react";
import { classes } from "./classes.ts";
import { Bar } from "./strokes.tsx";

export interface DefectStepsProps {
  /** How many of the four steps are done: raised, made safe, repaired, verified. */
  readonly done: 0 | 1 | 2 | 3 | 4;
  /** "Made safe." */
  readonly says: ReactNode;
  /** "Next: repair" */
  readonly next?: ReactNode;
  /** The next step is one that must not wait. */
  readonly danger?: boolean;
}

export function DefectSteps({ done, says, next, danger }: DefectStepsProps) {
  return (
    <span className="steps">
      <svg width="60" height="16" viewBox="0 0 60 16" aria-hidden="true">
        {[0, 1, 2, 3].map((step) => (
          <Step key={step} step={step} done={step < done} />
        ))}
      </svg>
      <span>
        <span className="steps-done">{says}</span>{" "}
        {next !== undefined && <span className={classes(danger && "steps-danger")}>{next}</span>}
      </span>
    </span>
  );
}

function Step({ step, done }: { readonly step: number; readonly done: boolean }) {
  const x = 5 + step * 17;
  return (
    <>
      {step > 0 && (
        <line
          x1={done ? x - 12 : x - 12.5}
          x2={x - 4.5}
          y1={8}
          y2={8}
          stroke={done ? "var(--hand)" : "var(--edge)"}
          strokeWidth={done ? 2.4 : 2.5}
          strokeDasharray={done ? undefined : "2.5 1.7"}
        />
      )}
      {done ? (
        <Bar x={x} top={1} bottom={15} width={5} ink="var(--hand)" />
      ) : (
        <Bar x={x} top={3} bottom={13} width={2} ink="var(--edge)" />
      )}
    </>
  );
}
