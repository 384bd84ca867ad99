import { useId } from "react";
import { type LimitStep, limitSteps, valueScale } from "./plot-scale.ts";
import { Diamond } from "./strokes.tsx";

export interface PlotReading {
  readonly day: number;
  readonly value: number;
  /** Known only to lie that way of the value. */
  readonly open?: "below" | "above";
  /** Beyond the limit of the time. */
  readonly outside: boolean;
  readonly min: number | null;
  readonly max: number | null;
  /** Of the checklist it was judged by. */
  readonly issue: number;
}

export interface PlotProps {
  /** Ascending by day; at least one. */
  readonly readings: readonly PlotReading[];
  /** Days without a reading that there should have been. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
  /** The ends of the trend's line. */
  readonly trend?: readonly [PlotEnd, PlotEnd];
  readonly days: readonly { readonly day: number; readonly label: string }[];
  readonly print: (value: number) => string;
  readonly sayStep: (side: "min" | "max", step: LimitStep, now: boolean) => string;
  /** Says what is drawn. */
  readonly label: string;
  readonly wide: boolean;
}

interface PlotEnd {
  readonly day: number;
  readonly value: number;
}

const TOP = 18;
const FLOOR = 176;
const HEIGHT = 204;

const lines = (step: readonly number[][]): string =>
  step.map((at, index) => `${index === 0 ? "M" : "L"}${at.join(" ")}`).join("");

/** Readings over time against the limit of the time. The margin rule is its upright axis. */
export function Plot(props: PlotProps) {
  const { readings, gaps, trend, days, print, sayStep, label, wide } = props;
  const id = useId();
  const [left, right, width] = wide ? [92, 792, 812] : [64, 376, 390];
  const steps = limitSteps(readings);
  const bounds = steps.flatMap(({ min, max }) => [min, max]).filter((one) => one !== null);
  const scale = valueScale([...readings.map(({ value }) => value), ...bounds]);
  const first = Math.min(readings[0]?.day ?? 0, trend?.[0].day ?? Number.POSITIVE_INFINITY);
  const last = Math.max(readings.at(-1)?.day ?? first + 1, trend?.[1].day ?? 0, first + 1);
  const x = (day: number) => left + 12 + ((day - first) / (last - first)) * (right - left - 24);
  const y = (value: number) =>
    FLOOR - ((value - scale.low) / (scale.high - scale.low)) * (FLOOR - TOP);
  const edges = steps.map((step, at) => {
    const next = steps[at + 1];
    return {
      step,
      from: at === 0 ? left : x(step.from),
      to: next === undefined ? right : x(next.from),
    };
  });
  const sides = (["min", "max"] as const).filter((side) =>
    steps.some((step) => step[side] !== null),
  );
  const end = readings.at(-1);
  const rises = (readings[1]?.value ?? 0) > (readings[0]?.value ?? 0);
  /** The last figure stands where the limit's word would: that goes to the other end. */
  const crowded = (bound: number) =>
    end !== undefined && x(end.day) > right - 110 && Math.abs(y(end.value) - y(bound)) < 30;
  const lit = (day: number) => x(day) < left + 40;
  return (
    <svg className="plot" viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={label}>
      <defs>
        <Hatch id={`${id}out`} ink="var(--fail)" />
        <Hatch id={`${id}gap`} ink="var(--edge)" />
      </defs>
      {scale.ticks.map((tick) => (
        <g key={tick}>
          <line x1={left} x2={right} y1={y(tick)} y2={y(tick)} stroke="var(--rule)" />
          <text x={left - 12} y={y(tick) + 5} textAnchor="end">
            {print(tick)}
          </text>
        </g>
      ))}
      {sides.map((side) =>
        edges.map(({ step, from, to }) => {
          const bound = step[side];
          if (bound === null) return null;
          const far = side === "min" ? FLOOR : TOP;
          const top = Math.min(y(bound), far);
          return (
            <rect
              key={`${side}${step.from}`}
              x={from}
              y={top}
              width={Math.max(0, to - from)}
              height={Math.abs(far - y(bound))}
              fill={`url(#${id}out)`}
            />
          );
        }),
      )}
      {gaps.map(({ from, to }) => (
        <rect
          key={from}
          x={x(Math.max(from, first))}
          y={TOP - 8}
          width={Math.max(6, x(Math.min(to, last)) - x(Math.max(from, first)))}
          height={FLOOR - TOP + 8}
          fill={`url(#${id}gap)`}
        />
      ))}
      {sides.map((side) => (
        <path
          key={side}
          className="plot-limit"
          d={runsOf(edges, side)
            .map((run) =>
              lines(
                run.flatMap(({ from, to, bound }) => [
                  [from, y(bound)],
                  [to, y(bound)],
                ]),
              ),
            )
            .join("")}
        />
      ))}
      <line x1={left} x2={right} y1={FLOOR} y2={FLOOR} stroke="var(--edge)" />
      {gaps.map(({ from, to }) => (
        <path
          key={from}
          className="plot-break"
          d={`M${x(Math.max(from, first))} ${FLOOR - 6}v12M${Math.max(x(Math.max(from, first)) + 6, x(Math.min(to, last)))} ${FLOOR - 6}v12`}
        />
      ))}
      {days.map(({ day, label: said }) => (
        <g key={day}>
          <line x1={x(day)} x2={x(day)} y1={FLOOR} y2={FLOOR + 5} stroke="var(--edge)" />
          <text x={x(day)} y={FLOOR + 21} textAnchor={lit(day) ? "start" : "middle"}>
            {said}
          </text>
        </g>
      ))}
      {trend && (
        <line
          className="plot-trend"
          x1={x(trend[0].day)}
          y1={y(trend[0].value)}
          x2={x(trend[1].day)}
          y2={y(trend[1].value)}
        />
      )}
      {readings.map((reading, at) => (
        <Found key={at} reading={reading} x={x(reading.day)} y={y(reading.value)} />
      ))}
      {edges.map(({ step, from, to }, at) =>
        sides.map((side) => {
          const bound = step[side];
          const now = at === edges.length - 1;
          if (bound === null || (!now && to - from < 60)) return null;
          return (
            <text
              key={`${side}${step.from}`}
              className={now ? "plot-said plot-now" : "plot-said"}
              x={now ? (crowded(bound) ? left + 60 : right - 4) : from + 6}
              y={y(bound) + (side === "min" ? 18 : -8)}
              textAnchor={now && !crowded(bound) ? "end" : "start"}
            >
              {sayStep(side, step, now)}
            </text>
          );
        }),
      )}
      {[readings[0], ...(readings.length > 1 ? [readings.at(-1)] : [])].map(
        (reading, at) =>
          reading && (
            <text
              key={at}
              className="plot-said plot-now"
              x={x(reading.day) + (at === 0 ? -6 : 6)}
              y={y(reading.value) + (at === 0 && rises ? 20 : -10)}
              textAnchor={at > 0 && x(reading.day) > right - 60 ? "end" : "start"}
            >
              {print(reading.value)}
            </text>
          ),
      )}
    </svg>
  );
}

/** Stretches over which a side has a limit at all. */
function runsOf(
  edges: readonly { readonly step: LimitStep; readonly from: number; readonly to: number }[],
  side: "min" | "max",
) {
  const runs: { from: number; to: number; bound: number }[][] = [];
  let open = false;
  for (const { step, from, to } of edges) {
    const bound = step[side];
    if (bound !== null && !open) runs.push([]);
    if (bound !== null) runs.at(-1)?.push({ from, to, bound });
    open = bound !== null;
  }
  return runs;
}

function Found({ reading, x, y }: { reading: PlotReading; x: number; y: number }) {
  if (reading.open !== undefined) {
    const reach = reading.open === "below" ? 12 : -12;
    return <path className="plot-open" d={`M${x - 4} ${y}h8M${x} ${y}v${reach}`} />;
  }
  if (reading.outside) return <Diamond x={x} y={y} r={5} />;
  return <circle className="plot-dot" cx={x} cy={y} r={4} />;
}

function Hatch({ id, ink }: { readonly id: string; readonly ink: string }) {
  return (
    <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse">
      <path d="M-1 8L8 -1M-1 1L1 -1M6 8L8 6" stroke={ink} strokeWidth="0.8" opacity="0.55" />
    </pattern>
  );
}
