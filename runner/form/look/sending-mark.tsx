import type { ReactNode } from "react";
import { classes } from "./classes.ts";
import { Bar, Diamond, Dot, Ring } from "./strokes.tsx";

export type SendingState = "waiting" | "sending" | "sent" | "refused";

/** An entry against the server: sent once the dot has crossed the bar. 34 × 16 px. */
export function SendingMark({ state }: { readonly state: SendingState }) {
  return (
    <svg className="sending" width="34" height="16" viewBox="0 0 34 16" aria-hidden="true">
      <Drawing state={state} />
    </svg>
  );
}

function Drawing({ state }: { readonly state: SendingState }) {
  switch (state) {
    case "waiting":
      return (
        <>
          <Thread from={11} />
          <Bar x={17} top={1} bottom={15} />
          <Ring x={6} y={8} r={4} />
        </>
      );
    case "sending":
      return (
        <>
          <Thread from={1} />
          <Bar x={17} top={1} bottom={15} />
          <Dot x={17} y={8} r={5} />
        </>
      );
    case "sent":
      return (
        <>
          <Thread from={1} />
          <Bar x={17} top={1} bottom={15} />
          <Dot x={28} y={8} r={4.6} />
        </>
      );
    case "refused":
      return (
        <>
          <Thread from={20} ink="var(--fail)" />
          <Bar x={17} top={1} bottom={15} width={5} ink="var(--fail)" />
          <Diamond x={7} y={8} />
        </>
      );
  }
}

function Thread({ from, ink = "var(--ink)" }: { from: number; ink?: string }) {
  return (
    <line x1={from} x2={34} y1={8} y2={8} stroke={ink} strokeWidth={1.5} strokeDasharray="2 2" />
  );
}

/** The word over the mark, with the entry's age, at the right of a row. */
export function Sending({
  state,
  word,
  age,
}: {
  readonly state: SendingState;
  readonly word: string;
  readonly age?: ReactNode;
}) {
  return (
    <span className="due">
      <span className={classes("due-text", state === "refused" && "due-refused")}>{word}</span>
      <SendingMark state={state} />
      {age !== undefined && <span className="due-below">{age}</span>}
    </span>
  );
}
