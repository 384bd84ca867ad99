import { civilParts } from "@roundbook/schemas";
import {
  dayAndMonth,
  LeafWords,
  MONTHS,
  PlaceHeading,
  Plot,
  printNumber,
  printQuantity,
  printUnit,
  useWide,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { dayOf } from "./due-of.tsx";
import type { HistoryGap } from "./life-gaps.ts";
import type { ReadingSeries } from "./life-readings.ts";
import { type Trend, trendOf } from "./life-trend.ts";

type Day = ReturnType<typeof dayOf>;

const monthOf = (day: number): string => {
  const { month, year } = civilParts(day as Day);
  return `${MONTHS[month - 1] ?? ""} ${year}`;
};

/** Three days of the axis, told by their months. */
const axisDays = (first: number, last: number, wide: boolean) => {
  const count = wide ? 3 : 2;
  return Array.from({ length: count + 1 }, (_, at) => {
    const day = Math.round(first + ((last - first) * at) / (count + 0.4));
    const { month, year } = civilParts(day as Day);
    return { day, label: `${(MONTHS[month - 1] ?? "").slice(0, 3)} ${year}` };
  });
};

const meetsWords = (trend: Exclude<Trend, string>, limit: string): string | undefined => {
  if (trend.meets === null) return undefined;
  const from = monthOf(trend.meets.earliest);
  const { latest } = trend.meets;
  if (latest === null) return book("plot.meets-from", { limit, from });
  const to = monthOf(latest);
  return from === to
    ? book("plot.meets-in", { limit, from })
    : book("plot.meets", { limit, from, to });
};

/** Two figures that matter: nobody reads more of a slope. */
const rough = (value: number) => Number(value.toPrecision(2));

const TrendWords = ({ trend, unit, limit }: { trend: Trend; unit: string; limit: string }) => {
  if (trend === "too-few") return <p className="second">{book("plot.too-few")}</p>;
  if (trend === "none-clear") return <p>{book("plot.no-trend")}</p>;
  const by = printQuantity(rough(Math.abs(trend.perMonth)), unit);
  return (
    <p>
      <strong>{book(trend.perMonth < 0 ? "plot.falls" : "plot.rises", { by })}</strong>{" "}
      {meetsWords(trend, limit)}
    </p>
  );
};

/** What was read over time against the limits of the time, and where it goes. */
export const LifePlot = ({
  series,
  gaps,
}: {
  readonly series: ReadingSeries;
  readonly gaps: readonly HistoryGap[];
}) => {
  const wide = useWide();
  const { title, unit } = series;
  const readings = series.readings.map((one) => ({ ...one, day: dayOf(one.day) }));
  const [first] = readings;
  const last = readings.at(-1);
  if (first === undefined || last === undefined) return null;
  const exact = readings.filter(({ open }) => open === undefined);
  // What lies beyond its limit has met it, whatever the line says.
  const trend = trendOf(exact, last.outside ? { min: null, max: null } : last);
  const line = typeof trend === "string" ? undefined : trend;
  const limit = line && (line.perMonth < 0 ? last.min : last.max);
  const end = line?.meets?.latest ?? line?.meets?.earliest ?? last.day;
  const decimals = Math.max(
    0,
    ...readings.map(({ value }) => Math.min(3, String(value).split(".")[1]?.length ?? 0)),
  );
  const print = (value: number) =>
    decimals === 0 ? printNumber(value) : value.toFixed(decimals).replace("-", "−");
  const inside = gaps.filter(({ from }) => from >= first.day && from < last.day);
  const say = (value: number, day: Day) => [printQuantity(value, unit), dayAndMonth(day)] as const;
  const [firstValue, firstDay] = say(first.value, first.day);
  const [lastValue, lastDay] = say(last.value, last.day);
  return (
    <section>
      <PlaceHeading
        title={title}
        aside={book("plot.aside", {
          unit: unit === "1" ? "" : `${printUnit(unit)}, `,
          count: readings.length,
        })}
      />
      <Plot
        readings={readings}
        gaps={inside.map(({ from, to }) => ({ from, to: to ?? last.day }))}
        trend={
          line && [
            { day: first.day, value: line.at(first.day) },
            { day: end, value: line.at(end) },
          ]
        }
        days={axisDays(first.day, Math.max(last.day, end), wide)}
        print={print}
        sayStep={(side, step, now) =>
          book(now ? "plot.limit" : "plot.limit-then", {
            side: book(`plot.${side}`),
            bound: print(step[side] ?? 0),
            issue: step.issue,
          })
        }
        label={book("plot.drawn", {
          title,
          count: printNumber(readings.length),
          first: firstValue,
          firstDay,
          last: lastValue,
          lastDay,
        })}
        wide={wide}
      />
      <LeafWords>
        <TrendWords
          {...{ trend, unit }}
          limit={limit === undefined || limit === null ? "" : printQuantity(limit, unit)}
        />
        <p className="second">
          {[
            readings.some(({ min, max }) => min !== null || max !== null) &&
              book("plot.key-outside"),
            inside.length > 0 && book("plot.key-gap"),
            exact.length < readings.length && book("plot.key-open"),
            line?.meets && book("plot.by-which"),
          ]
            .filter(Boolean)
            .join(" ")}
        </p>
      </LeafWords>
    </section>
  );
};
