import { lineBox } from "./limit-scale.ts";
import { Diamond, Dot, Ring } from "./strokes.tsx";

/** What was found; `censored` says on which side of `at` it lies: `<0.3` is below. */
export interface Now {
  readonly at: number;
  readonly verdict: "pass" | "advisory" | "fail" | "undecided";
  readonly censored?: "below" | "above";
  /** Worked out by the book: nobody wrote it, so it is not in hand. */
  readonly printed?: boolean;
}

export function LimitNow({
  now,
  x,
  axis,
}: {
  readonly now: Now;
  readonly x: (figure: number) => number;
  readonly axis: number;
}) {
  const at = x(now.at);
  const own = now.printed ? "var(--ink)" : "var(--hand)";
  if (now.censored) {
    const ink = now.verdict === "fail" ? "var(--fail)" : own;
    const end = now.censored === "below" ? lineBox.left : lineBox.right;
    return (
      <>
        <line x1={at} x2={end} y1={axis} y2={axis} stroke={ink} strokeWidth={6} />
        <Ring x={at} y={axis} r={6} width={2.6} ink={ink} />
      </>
    );
  }
  switch (now.verdict) {
    case "fail":
      return <Diamond x={at} y={axis} r={8.6} />;
    case "advisory":
    case "pass":
      return <Dot x={at} y={axis} r={6.6} ink={own} />;
    case "undecided":
      return <Ring x={at} y={axis} r={6} width={2.4} ink={own} />;
  }
}
