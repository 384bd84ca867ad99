/** The few strokes every mark is drawn with. Lengths are in the px of the drawing they stand in. */
interface Stroke {
  readonly x: number;
  readonly ink?: string;
}

/** A limit: upright, dashed when it is unsure where it stands. */
export function Bar({
  x,
  top = 1,
  bottom = 13,
  width = 2.5,
  unsure,
  ink = "var(--ink)",
}: Stroke & {
  readonly top?: number;
  readonly bottom?: number;
  readonly width?: number;
  readonly unsure?: boolean;
}) {
  const dash = (bottom - top) / 5;
  return (
    <line
      x1={x}
      x2={x}
      y1={top}
      y2={bottom}
      stroke={ink}
      strokeWidth={width}
      strokeDasharray={unsure ? `${dash} ${dash}` : undefined}
    />
  );
}

interface Spot extends Stroke {
  readonly y: number;
  readonly r?: number;
}

/** What was found. */
export function Dot({ x, y, r = 4, ink = "var(--ink)" }: Spot) {
  return <circle cx={x} cy={y} r={r} fill={ink} />;
}

/** What was found before, or is not there yet. */
export function Ring({
  x,
  y,
  r = 3.5,
  ink = "var(--ink)",
  width = 2,
}: Spot & { readonly width?: number }) {
  return <circle cx={x} cy={y} r={r} fill="var(--paper)" stroke={ink} strokeWidth={width} />;
}

/** Beyond a bar. */
export function Diamond({ x, y, r = 5.5, ink = "var(--fail)" }: Spot) {
  return <path d={`M${x} ${y - r}l${r} ${r}l${-r} ${r}l${-r} ${-r}z`} fill={ink} />;
}
