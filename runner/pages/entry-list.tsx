import type { ChecklistRow, HistoryEntry } from "@roundbook/schemas";
import { Fragment, type ReactNode } from "react";
import { Entry, printNumber } from "../form/index.ts";
import { book } from "../messages/book.ts";
import { paper } from "../messages/paper.ts";
import { printDay } from "./day-words.ts";
import { entryWhen, entryWords } from "./entry-words.tsx";
import { readingWords } from "./life-readings.ts";
import { judgementOf, OverallMark, sinceSigned } from "./overall-mark.tsx";

export interface EntryListProps {
  readonly rows: readonly HistoryEntry[];
  readonly titles: ReadonlyMap<string, string>;
  /** On an asset's own page the asset is not named again and each entry has its day. */
  readonly ofAsset: boolean;
  /** Issues by which the points of inspections are called; absent: only their number is told. */
  readonly checklists?: readonly ChecklistRow[];
  /** Rows that stand above an entry: what came to nothing after it. */
  readonly before?: (entry: string) => ReactNode;
  readonly onFollow: (href: string) => void;
}

const sentences = (parts: readonly (string | undefined)[]): string =>
  parts
    .flatMap((part) => part || [])
    .map((part, at, all) => (at < all.length - 1 && !/[.!?]$/.test(part) ? `${part}.` : part))
    .join(" ");

/** Shorter checks that an inspection stood for as well. */
const coveredWords = ({ covered = [] }: HistoryEntry) =>
  covered.length === 0 ? undefined : book("entry.covered", { titles: covered.join("; ") });

/** That it was done on paper, and on which later day it was keyed in. */
const paperWords = ({ entry }: HistoryEntry) =>
  entry.kind === "inspection" && entry.body.fromPaper !== undefined
    ? paper("paper.keyed", { keyed: printDay(entry.body.fromPaper.keyedAt.slice(0, 10)) })
    : undefined;

/** Entries as ruled rows: number | what was written, when and by whom | verdict. */
export const EntryList = ({
  rows,
  titles,
  ofAsset,
  checklists = [],
  before,
  onFollow,
}: EntryListProps) =>
  rows.map((row) => {
    const { title, words } = entryWords(row, titles);
    const { about, entry, leaf } = row;
    const named = !ofAsset && about ? `${about.number} ${about.description}` : null;
    const judged = entry.kind === "inspection" || entry.kind === "result-received";
    const judgement = judged ? judgementOf(row) : null;
    return (
      <Fragment key={entry.id}>
        {before?.(entry.id)}
        <Entry
          number={printNumber(leaf.seq)}
          title={named ?? title}
          words={
            sentences([
              ...(named ? [title] : []),
              readingWords(row, checklists),
              words,
              sinceSigned(row),
              coveredWords(row),
              paperWords(row),
            ]) || undefined
          }
          when={entryWhen(row, ofAsset)}
          verdict={judgement ? <OverallMark judgement={judgement} /> : undefined}
          href={entry.asset ? `/asset/${entry.asset}/entry/${entry.id}` : undefined}
          onFollow={onFollow}
        />
      </Fragment>
    );
  });
