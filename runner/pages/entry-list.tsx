import type { HistoryEntry } from "@roundbook/schemas";
import { Entry, printNumber } from "../form/index.ts";
import { entryWhen, entryWords, judgementOf, OverallMark } from "./entry-words.tsx";

export interface EntryListProps {
  readonly rows: readonly HistoryEntry[];
  readonly titles: ReadonlyMap<string, string>;
  /** On an asset's own page the asset is not named again and each entry has its day. */
  readonly ofAsset: boolean;
  readonly onFollow: (href: string) => void;
}

/** Entries as ruled rows: number | what was written, when and by whom | verdict. */
export const EntryList = ({ rows, titles, ofAsset, onFollow }: EntryListProps) =>
  rows.map((row) => {
    const { title, words } = entryWords(row, titles);
    const { about, entry, leaf } = row;
    const named = !ofAsset && about ? `${about.number} ${about.description}` : null;
    const judgement = entry.kind === "inspection" ? judgementOf(row) : null;
    return (
      <Entry
        key={entry.id}
        number={printNumber(leaf.seq)}
        title={named ?? title}
        words={named ? [title, words].filter(Boolean).join(". ") : words}
        when={entryWhen(row, ofAsset)}
        verdict={judgement ? <OverallMark overall={judgement.overall} /> : undefined}
        href={entry.asset ? `/asset/${entry.asset}/entry/${entry.id}` : undefined}
        onFollow={onFollow}
      />
    );
  });
