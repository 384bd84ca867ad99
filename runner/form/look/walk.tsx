import type { ReactNode } from "react";
import { Bar, Diamond, Dot } from "./strokes.tsx";

export type WalkStroke = "done" | "not-completed" | "over" | "here" | "to-come";

const step = 13;
const perLine = 23;
const lineHeight = 22;

/** A stroke an asset in walking order, 23 to a line, always with the sentence that says the same. */
export function Walk({
  strokes,
  children,
}: {
  readonly strokes: readonly WalkStroke[];
  readonly children: ReactNode;
}) {
  const lines = Math.max(1, Math.ceil(strokes.length / perLine));
  return (
    <div className="walk">
      {strokes.length > 0 && (
        <svg viewBox={`0 0 ${step * perLine} ${lines * lineHeight}`} aria-hidden="true">
          {strokes.map((stroke, at) => (
            <One key={at} stroke={stroke} at={at} />
          ))}
        </svg>
      )}
      <p>{children}</p>
    </div>
  );
}

function One({ stroke, at }: { readonly stroke: WalkStroke; readonly at: number }) {
  const x = (at % perLine) * step + 6.5;
  const foot = Math.floor(at / perLine) * lineHeight + 21;
  switch (stroke) {
    case "done":
      return <Bar x={x} top={foot - 20} bottom={foot} width={4} ink="var(--hand)" />;
    case "not-completed":
      return (
        <>
          <Bar x={x} top={foot - 20} bottom={foot - 13.4} width={4} ink="var(--hand)" />
          <Bar x={x} top={foot - 6.4} bottom={foot} width={4} ink="var(--hand)" />
        </>
      );
    case "over":
      return <Diamond x={x} y={foot - 5.6} r={5.6} />;
    case "here":
      return <Dot x={x} y={foot - 5.6} r={5.4} />;
    case "to-come":
      return <Bar x={x} top={foot - 9} bottom={foot} width={2.4} ink="var(--edge)" />;
  }
}
