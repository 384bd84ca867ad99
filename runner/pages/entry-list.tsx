import type { HistoryEntry } from "@roundbook/schemas";
import { Entry, printNumber } from "../form/index.ts";
import { entryWhen, entryWords } from "./entry-words.tsx";
import { judgementOf, OverallMark, sinceSigned } from "./overall-mark.tsx";

export interface EntryListProps {
  readonly rows: readonly HistoryEntry[];
  readonly titles: ReadonlyMap<string, string>;
  /** On an asset's own page the asset is not named again and each entry has its day. */
  readonly ofAsset: boolean;
  readonly onFollow: (href: string) => void;
}

const sentences = (parts: readonly (string | undefined)[]): string =>
  parts
    .flatMap((part) => part || [])
    .map((part, at, all) => (at < all.length - 1 && !/[.!?]$/.test(part) ? `${part}.` : part))
    .join(" ");

/** Entries as ruled rows: number | what was written, when and by whom | verdict. */
export const EntryList = ({ rows, titles, ofAsset, onFollow }: EntryListProps) =>
  rows.map((row) => {
    const { title, words } = entryWords(row, titles);
    const { about, entry, leaf } = row;
    const named = !ofAsset && about ? `${about.number} ${about.description}` : null;
    const judged = entry.kind === "inspection" || entry.kind === "result-received";
    const judgement = judged ? judgementOf(row) : null;
    return (
      <Entry
        key={entry.id}
        number={printNumber(leaf.seq)}
        title={named ?? title}
        words={sentences([...(named ? [title] : []), words, sinceSigned(row)]) || undefined}
        when={entryWhen(row, ofAsset)}
        verdict={judgement ? <OverallMark judgement={judgement} /> : undefined}
        href={entry.asset ? `/asset/${entry.asset}/entry/${entry.id}` : undefined}
        onFollow={onFollow}
      />
    );
  });
