import type { RepeatDefinition } from "@roundbook/schemas";
import { anyOf } from "../messages/any-of.ts";
import { f } from "../messages/facts.ts";
import type { DraftDocument } from "./draft-document.ts";
import { formulaWords } from "./formula-words.ts";

/** A line for each rule that stops points. */
export const stopWords = (document: DraftDocument): string[] =>
  (document.stops ?? []).map(({ after, on, points = [], groups = [], say }) => {
    const title = (name: string) => document.properties[name]?.title ?? name;
    const group = (id: string) => document.groups?.find((one) => one.id === id)?.title ?? id;
    return f("fact.stop", {
      verdicts: anyOf(on.map((one) => f(`verdict.${one}`))),
      after: anyOf(after.map(title)),
      targets: [...groups.map(group), ...points.map(title)].join(", "),
      say,
    });
  });

/** "asked for each leaf: 2", "asked once". */
export const repeatWords = (
  document: DraftDocument,
  repeat: RepeatDefinition | undefined,
): string => {
  if (!repeat) return f("fact.once");
  const { each, count, members, atMost } = repeat;
  const many = members
    ? members.map(({ title }) => title).join(", ")
    : typeof count === "string"
      ? formulaWords(document, count)
      : String(count);
  return f("fact.repeat", { each, many }) + (atMost ? f("fact.repeat-most", { atMost }) : "");
};
