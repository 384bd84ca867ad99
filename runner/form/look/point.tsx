import type { ReactNode } from "react";
import { classes } from "./classes.ts";
import { ProblemMark } from "./problems.tsx";
import { Target } from "./target.tsx";

export interface PointProps {
  readonly number: string;
  readonly question: ReactNode;
  readonly help?: ReactNode;
  /** An `Answer`, a `Verdict`, both, or a plain word such as "not yet". */
  readonly answer?: ReactNode;
  /** Second voice: at the right of a wide page, under the question on a phone. */
  readonly note?: ReactNode;
  readonly open?: boolean;
  /** Not asked any more: struck, and quiet. */
  readonly stopped?: boolean;
  /** A long answer, under the question instead of beside it. */
  readonly below?: boolean;
  /** Opens or closes it; without it the head is plain. */
  readonly onToggle?: () => void;
  readonly problem?: { readonly number: number; readonly label: string; readonly href?: string };
  readonly id?: string;
  /** The body keeps its own margins, as sentences do. */
  readonly flush?: boolean;
  /** The body, printed only when open. */
  readonly children?: ReactNode;
}

/** Number | question | answer; the open one stands behind a 6 px bar. */
export function Point(props: PointProps) {
  const { number, question, help, note, answer, open, stopped, below, onToggle } = props;
  const { problem, id, flush, children } = props;
  return (
    <section className={classes("point", open && "point-open", stopped && "point-stopped")} id={id}>
      <div className="point-head">
        <span className="point-number">{number}</span>
        <div>
          {/* The button covers the head; the answer stays outside it, so that a change is announced. */}
          <Target className="point-question" onPress={onToggle} expanded={open ?? false}>
            {question}
            {problem && <ProblemMark {...problem} href={onToggle ? undefined : problem.href} />}
          </Target>
          {help !== undefined && <p className="second">{help}</p>}
        </div>
        {note !== undefined && <span className="point-note">{note}</span>}
        {answer !== undefined && (
          <div className={classes("point-answer", below && "point-answer-below")}>{answer}</div>
        )}
      </div>
      {open && children !== undefined && (
        <div className={classes("point-body", flush && "point-body-flush")}>{children}</div>
      )}
    </section>
  );
}

/** What a person answered; `ditto` when it was declared for a group. */
export function Answer({
  ditto,
  children,
}: {
  /** The words read out in place of the ditto mark. */
  readonly ditto?: string;
  readonly children: ReactNode;
}) {
  return (
    <span className="answer">
      {ditto !== undefined && <Ditto label={ditto} />}
      {children}
    </span>
  );
}

function Ditto({ label }: { readonly label: string }) {
  return (
    <>
      <span className="ditto" aria-hidden="true">
        ”
      </span>
      <span className="unseen">{label} </span>
    </>
  );
}

/** One line saying who declared an answer for a group, when, and for how many points. */
export function GroupAnswer({
  says,
  children,
  action,
}: {
  readonly says: string;
  readonly children: ReactNode;
  readonly action?: ReactNode;
}) {
  return (
    <div className="group-answer">
      <span className="ditto" aria-hidden="true">
        ”
      </span>
      <div>
        <strong>{says}</strong>
        <p className="second">{children}</p>
      </div>
      {action}
    </div>
  );
}
