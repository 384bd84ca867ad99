import type { Checklist, Explanation, ProblemParam } from "@roundbook/schemas";
import { createContext, useContext, useMemo } from "react";
import { useMessages } from "./messages.tsx";

/** Parameters that hold a name of the checklist, to be read by its title. */
const NAMES = new Set(["name", "point"]);

/** "asset.length" is "Length", "answers.cable" its question; other names stay as they are. */
export function titleOf(document: Checklist, name: string): string {
  const [space, rest = ""] = name.split(".", 2);
  if (space === "asset") return document.particulars?.[rest]?.title ?? name;
  if (space === "answers") return document.properties[rest]?.title ?? name;
  return document.values?.[name]?.title ?? document.properties[name]?.title ?? name;
}

export function withTitles(document: Checklist, { code, params }: Explanation): Explanation {
  const titled = (key: string, value: ProblemParam): ProblemParam =>
    NAMES.has(key) && typeof value === "string" ? titleOf(document, value) : value;
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
