import {
  type Checklist,
  type Explanation,
  type ProblemParam,
  splitAnswerName,
} from "@roundbook/schemas";
import { createContext, useContext, useMemo } from "react";
import { dateWords } from "./dates.ts";
import { useMessages } from "./messages.tsx";

/** Parameters that hold a name of the checklist, to be read by its title. */
const NAMES = new Set(["name", "point", "by", "repeat"]);
/** Parameters that are civil dates where the reason is about one. */
const DATED = new Set(["not-before", "before-earliest", "not-after", "after-latest"]);

/** The question of an answer, with its member in a repeat: "Gap at the top (Leaf left)". */
function questionOf(document: Checklist, name: string): string | undefined {
  const { point, member } = splitAnswerName(name);
  const title = document.properties[point]?.title;
  if (title === undefined || member === null) return title;
  const repeat = document.groups?.find(({ points }) => points.includes(point))?.repeat;
  const named = repeat?.members?.find(({ id }) => id === member)?.title;
  return `${title} (${named ?? `${repeat?.each ?? ""} ${member}`.trim()})`;
}

/** "asset.length" is "Length", "answers.cable" its question; other names stay as they are. */
export function titleOf(document: Checklist, name: string): string {
  const [space, rest = ""] = name.split(".", 2);
  if (space === "asset") return document.particulars?.[rest]?.title ?? name;
  if (space === "answers") return questionOf(document, rest) ?? name;
  return (
    document.values?.[name]?.title ??
    questionOf(document, name) ??
    document.groups?.find(({ id }) => id === name)?.title ??
    name
  );
}

export function withTitles(document: Checklist, { code, params }: Explanation): Explanation {
  const titled = (key: string, value: ProblemParam): ProblemParam => {
    if (typeof value !== "string") return value;
    if (DATED.has(code)) return dateWords(value);
    return NAMES.has(key) ? titleOf(document, value) : value;
  };
  return {
    code,
    params: Object.fromEntries(
      Object.entries(params).map(([key, value]) => [key, titled(key, value)]),
    ),
  };
}

const OfChecklist = createContext<Checklist | undefined>(undefined);
export const ChecklistTitles = OfChecklist.Provider;

/** Words an explanation with the titles of the checklist at hand in place of its names. */
export function useTitled(): (what: Explanation) => string {
  const document = useContext(OfChecklist);
  const { say } = useMessages();
  return useMemo(
    () => (what) => say(document === undefined ? what : withTitles(document, what)),
    [document, say],
  );
}
