import { dateWords } from "@roundbook/runner/form";
import type { DateBound } from "@roundbook/schemas";
import { f } from "../messages/facts.ts";
import type { DateFields } from "./date-bound.ts";
import type { DraftDocument } from "./draft-document.ts";
import { duration } from "./fact-words.ts";
import { nameWords } from "./formula-words.ts";

export const originWords = (document: DraftDocument, from: string): string =>
  from === "today" ? f("date.today") : (nameWords(document, from) ?? from);

/** "today", "3 months after the date of purchase", "31 January 2027". */
export const dateBoundWords = (document: DraftDocument, bound: DateBound): string => {
  if (typeof bound === "string") return dateWords(bound);
  const from = originWords(document, bound.from);
  const moved = [
    bound.plus && f("date.plus", { time: duration(bound.plus) }),
    bound.minus && f("date.minus", { time: duration(bound.minus) }),
  ].filter(Boolean);
  return moved.length > 0 ? `${moved.join(", ")} ${from}` : from;
};

/** "3 months after", as it is typed and read; empty for the day itself. */
export const distanceWords = ({
  count,
  unit,
  sign,
}: Pick<DateFields, "count" | "unit" | "sign">): string =>
  count === 0 ? "" : f(`date.${sign}`, { time: duration(`P${count}${unit}`) });
