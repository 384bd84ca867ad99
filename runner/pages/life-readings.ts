import {
  type Answers,
  type ChecklistRow,
  convert,
  type HistoryEntry,
  isReading,
  type Judgement,
  pointKind,
} from "@roundbook/schemas";
import { printNumber, printQuantity } from "../form/index.ts";
import { book } from "../messages/book.ts";
import { judgementOf } from "./overall-mark.tsx";

export interface FoundReading {
  readonly entry: string;
  readonly day: string;
  /** In the unit of the series. */
  readonly value: number;
  readonly open?: "below" | "above";
  readonly outside: boolean;
  /** The limits it was judged by. */
  readonly min: number | null;
  readonly max: number | null;
  readonly issue: number;
}

/** All readings of one point of a checklist, the oldest first. */
export interface ReadingSeries {
  readonly checklist: string;
  readonly point: string;
  readonly title: string;
  readonly unit: string;
  readonly readings: readonly FoundReading[];
}

/** The strictest limit of each side whose breach is a fail. */
function boundsOf(judgement: Judgement, point: string): Pick<FoundReading, "min" | "max"> {
  const of = (kinds: readonly string[]) =>
    (judgement.points[point]?.limits ?? []).flatMap(({ severity, kind, bound }) =>
      severity === "fail" && kinds.includes(kind) && bound !== null ? [bound] : [],
    );
  const lows = of(["min", "exclusiveMin"]);
  const highs = of(["max", "exclusiveMax"]);
  return {
    min: lows.length === 0 ? null : Math.max(...lows),
    max: highs.length === 0 ? null : Math.min(...highs),
  };
}

const foundIn = (row: HistoryEntry, point: string, unit: string): FoundReading[] => {
  const { entry } = row;
  if (entry.kind !== "inspection") return [];
  const answer = (entry.body.answers as Answers)[point];
  const judgement = judgementOf(row);
  if (!isReading(answer) || judgement === null) return [];
  const value = convert(answer.value, answer.unit, unit);
  if (value === undefined) return [];
  const { comparator } = answer;
  const open = comparator && (comparator.startsWith("<") ? "below" : "above");
  return [
    {
      entry: entry.id,
      day: entry.civilDate,
      value,
      ...(open && { open }),
      outside: judgement.points[point]?.verdict === "fail",
      ...boundsOf(judgement, point),
      issue: entry.body.checklist.issue,
    },
  ];
};

const byTime = (a: HistoryEntry, b: HistoryEntry): number =>
  a.entry.civilDate === b.entry.civilDate
    ? (a.entry.happenedAt ?? "") < (b.entry.happenedAt ?? "")
      ? -1
      : 1
    : a.entry.civilDate < b.entry.civilDate
      ? -1
      : 1;

/** Readings of every point that its newest issue reads, of what was read more than once. */
export const seriesOf = (
  rows: readonly HistoryEntry[],
  checklists: readonly ChecklistRow[],
): ReadingSeries[] =>
  checklists.flatMap(({ id, document }) => {
    const own = rows
      .filter(({ entry }) => entry.kind === "inspection" && entry.body.checklist.id === id)
      .sort(byTime);
    return Object.entries(document.properties).flatMap(([point, definition]): ReadingSeries[] => {
      const { title, quantity } = definition;
      if (pointKind(definition) !== "reading" || quantity === undefined) return [];
      const { unit } = quantity;
      const readings = own.flatMap((row) => foundIn(row, point, unit));
      return readings.length > 1 ? [{ checklist: id, point, title, unit, readings }] : [];
    });
  });

/** More would be no line. */
const MOST_SAID = 3;

/** "Flow 61.0 °C (min 60), return 52.4 °C": what an inspection read, as its newest issue calls it. */
export const readingWords = (
  row: HistoryEntry,
  checklists: readonly ChecklistRow[],
): string | undefined => {
  const { entry } = row;
  if (entry.kind !== "inspection") return undefined;
  const { id } = entry.body.checklist;
  const document = checklists.find((one) => one.id === id)?.document;
  const said = Object.entries(document?.properties ?? {}).flatMap(([point, definition]) => {
    const { title, quantity } = definition;
    if (pointKind(definition) !== "reading" || quantity === undefined) return [];
    return foundIn(row, point, quantity.unit).map(({ value, open, min, max }) => {
      const comparator = open && (open === "below" ? "<" : ">");
      const bounds = [
        min !== null && `${book("plot.min")} ${printNumber(min)}`,
        max !== null && `${book("plot.max")} ${printNumber(max)}`,
      ].filter(Boolean);
      const found = printQuantity(value, quantity.unit, { comparator });
      return `${title} ${found}${bounds.length > 0 ? ` (${bounds.join(", ")})` : ""}`;
    });
  });
  return said.length === 0 ? undefined : said.slice(0, MOST_SAID).join("; ");
};
