import type { Verdict as Judged, OverallVerdict, PointVerdict } from "@roundbook/schemas";
import { classes } from "./classes.ts";
import { Bar, Diamond, Dot, Ring } from "./strokes.tsx";

export type ShownVerdict = NonNullable<PointVerdict | OverallVerdict>;

/** A reading against its bars, 32 × 18 px; never printed without its word beside it. */
export function VerdictMark({ verdict }: { readonly verdict: Judged }) {
  return (
    <svg
      className={`mark-${verdict}`}
      width="32"
      height="18"
      viewBox="0 0 32 18"
      aria-hidden="true"
    >
      <Drawing verdict={verdict} />
    </svg>
  );
}

const bar = { top: 1, bottom: 17, width: 3, ink: "currentColor" } as const;

function Drawing({ verdict }: { readonly verdict: Judged }) {
  switch (verdict) {
    case "pass":
      return (
        <>
          <Bar x={3} {...bar} />
          <Dot x={16} y={9} r={5.6} ink="currentColor" />
          <Bar x={29} {...bar} />
        </>
      );
    case "advisory":
      return (
        <>
          <Bar x={3} {...bar} />
          <Bar x={22} {...bar} />
          <Dot x={22} y={9} r={6.4} ink="currentColor" />
        </>
      );
    case "fail":
      return (
        <>
          <Bar x={3} {...bar} />
          <Bar x={12} {...bar} />
          <Diamond x={24.4} y={9} r={7.7} ink="currentColor" />
        </>
      );
    case "undecided":
      return (
        <>
          <Bar x={3} {...bar} unsure />
          <Ring x={16} y={9} r={5.2} ink="currentColor" />
          <Bar x={29} {...bar} unsure />
        </>
      );
  }
}

/** Mark and word; what was not judged is a plain word without a mark. `live` announces a change. */
export function Verdict({
  verdict,
  word,
  live,
}: {
  readonly verdict: ShownVerdict;
  readonly word: string;
  readonly live?: boolean;
}) {
  const judged = verdict !== "not-counted" && verdict !== "not-evaluated";
  return (
    <span className={classes("verdict", `verdict-${verdict}`)} role={live ? "status" : undefined}>
      {judged && <VerdictMark verdict={verdict} />}
      {word}
    </span>
  );
}
