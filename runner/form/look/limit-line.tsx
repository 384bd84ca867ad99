import { useId } from "react";
import { anchorOf, placeLabels } from "./limit-labels.ts";
import { LimitNow, type Now } from "./limit-now.tsx";
import { clearTicks, lineBox, type Range, scaleFor } from "./limit-scale.ts";
import { type LimitBound, labelWishes } from "./limit-wishes.ts";
import { Bar, Ring } from "./strokes.tsx";

export interface LimitLineProps {
  /** What the drawing says, for those who do not see it. */
  readonly description: string;
  readonly range: Range;
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
  readonly bounds: readonly LimitBound[];
  readonly last?: { readonly at: number; readonly label: string };
  readonly now?: Now;
}

/** A reading against its limits: bars, hatching outside, a ring for the last and a dot for now. */
export function LimitLine({ description, range, ticks, bounds, last, now }: LimitLineProps) {
  const hatch = useId();
  const x = scaleFor(range);
  const labels = placeLabels(labelWishes(bounds, last, x));
  const axis = 36 + 18 * Math.max(0, ...labels.map((label) => label.line));
  const taken = [...bounds, ...(last ? [last] : [])].map((mark) => x(mark.at));
  return (
    <div className="limit-line" role="img" aria-label={description}>
      <svg viewBox={`0 0 ${lineBox.width} ${axis + 26}`} aria-hidden="true">
        <pattern
          id={hatch}
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line x1="3" x2="3" y1="0" y2="6" stroke="var(--fail)" strokeWidth="0.8" opacity="0.65" />
        </pattern>
        {bounds
          .filter((bound) => !bound.unsure)
          .map((bound, at) => {
            const from = bound.side === "max" ? x(bound.at) : lineBox.left;
            const to = bound.side === "max" ? lineBox.right : x(bound.at);
            const width = Math.max(0, to - from);
            return (
              <rect
                key={at}
                x={from}
                y={axis - 11}
                width={width}
                height={22}
                fill={`url(#${hatch})`}
              />
            );
          })}
        <line
          x1={lineBox.left}
          x2={lineBox.right}
          y1={axis}
          y2={axis}
          stroke="var(--edge)"
          strokeWidth={1.5}
        />
        {clearTicks(ticks, taken, x).map((tick) => (
          <g key={tick.label}>
            <line x1={x(tick.at)} x2={x(tick.at)} y1={axis} y2={axis + 6} stroke="var(--edge)" />
            <text x={x(tick.at)} y={axis + 22} textAnchor="middle">
              {tick.label}
            </text>
          </g>
        ))}
        {now?.censored && <LimitNow now={now} x={x} axis={axis} />}
        {bounds.map((bound, at) => (
          <Bar
            key={at}
            x={x(bound.at)}
            top={axis - 15}
            bottom={axis + 15}
            width={3}
            unsure={bound.unsure}
          />
        ))}
        {last && <Ring x={x(last.at)} y={axis} r={5.4} width={2.2} />}
        {now && !now.censored && <LimitNow now={now} x={x} axis={axis} />}
        {labels.map((label, at) => (
          <text
            key={at}
            {...anchorOf(label)}
            y={axis - 21 - 18 * label.line}
            className={label.strong ? "limit-label" : undefined}
          >
            {label.text}
          </text>
        ))}
      </svg>
    </div>
  );
}
