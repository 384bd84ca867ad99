import type { EvidenceItem } from "@roundbook/schemas";

type Items = readonly EvidenceItem[];

/** The words beside an answer, "" where there are none. */
export function noteOf(items: Items): string {
  const note = items.find(({ kind }) => kind === "note")?.note;
  return typeof note === "string" ? note : "";
}

/** The evidence with these words in place of any before. */
export function withNote(items: Items, text: string): Items {
  const others = items.filter(({ kind }) => kind !== "note");
  return text === "" ? others : [...others, { kind: "note", note: text }];
}
