import type { Entry, HistoryEntry, Judgement } from "@roundbook/schemas";
import { book } from "../messages/book.ts";
import { w } from "../messages/page.ts";
import { clockTime, printDay } from "./day-words.ts";
import { judgementOf, resultWords, tally } from "./overall-mark.tsx";
import { planningWords } from "./planning-words.ts";

/** What an entry is called in a list, and a line of what it says. */
export const entryWords = (
  row: HistoryEntry,
  titles: ReadonlyMap<string, string>,
): { readonly title: string; readonly words?: string } => {
  const erased = book("entry.erased");
  const text = (commit: { commit: string } | undefined) =>
    commit ? (row.contents[commit.commit] ?? erased) : undefined;
  return wordsOfKind(row, text, titles, judgementOf(row));
};

const wordsOfKind = (
  row: HistoryEntry,
  text: (commit: { commit: string } | undefined) => string | undefined,
  titles: ReadonlyMap<string, string>,
  judgement: Judgement | null,
): { title: string; words?: string } => {
  const { entry } = row;
  switch (entry.kind) {
    case "inspection": {
      const { checklist } = entry.body;
      const title = titles.get(checklist.hash) ?? "";
      return {
        title: book("entry.inspection", { title, issue: checklist.issue }),
        words: judgement ? book("entry.points", tally(judgement)) : undefined,
      };
    }
    case "not-completed":
      return {
        title: titles.get(entry.body.checklist.hash) ?? "",
        words: [
          book("entry.not-completed", { reason: book(`reason.${entry.body.reason}`) }),
          text(entry.body.note),
        ]
          .filter(Boolean)
          .join(". "),
      };
    case "registered":
      return {
        title: book("entry.registered"),
        words: [
          book("entry.registered-as", {
            number: entry.body.number,
            description: entry.body.description,
          }),
          // Told where the asset is looked at: one of the two needs another label.
          row.leaf.flags.includes("duplicate-number") &&
            book("entry.flags", { flags: book("flag.duplicate-number") }),
        ]
          .filter(Boolean)
          .join(". "),
      };
    case "brought-forward":
      return {
        title: book("entry.brought-forward"),
        words: book("entry.brought-forward-words", { day: printDay(entry.body.doneOn) }),
      };
    case "moved":
      return { title: book("entry.moved"), words: titles.get(entry.body.place) };
    case "status-changed":
      return {
        title: book("entry.status-changed", { status: w(`status.${entry.body.status}`) }),
        words: entry.body.reason,
      };
    case "defect-step":
      return {
        title: book("entry.defect-step", {
          step: book(`defects.${entry.body.step}`).toLowerCase().replace(".", ""),
        }),
        words: text(entry.body.note),
      };
    case "result-received": {
      const { point, result, note } = entry.body;
      return {
        title: book("entry.result-received"),
        words: [resultWords(row, point, result), text(note)].filter(Boolean).join(". "),
      };
    }
    case "correction":
      return { title: book("entry.correction"), words: text(entry.body.note) };
    case "estate-named":
      return { title: book("entry.estate-named", { name: entry.body.name }) };
    case "person-added":
      return {
        title: book("entry.person-added"),
        words: book("entry.person-named", {
          name: text(entry.body.name) ?? "",
          role: entry.body.role,
        }),
      };
    case "device-enrolled":
      return { title: book("entry.device-enrolled"), words: entry.body.label };
    case "place-added":
      return {
        title: book("entry.place-added"),
        words: `${entry.body.code} ${entry.body.name}`,
      };
    case "asset-type-issued":
      return {
        title: book("entry.asset-type-issued", { version: entry.body.version }),
        words: entry.body.title,
      };
    case "checklist-issued":
    case "checklist-withdrawn":
      return {
        title: book(`entry.${entry.kind}`, { issue: entry.body.checklist.issue }),
        words: [titles.get(entry.body.checklist.hash), entry.body.reason]
          .filter(Boolean)
          .join(". "),
      };
    case "interval-set":
      return {
        title: book("entry.interval-set"),
        words: [entry.body.definition.title, entry.body.reason].filter(Boolean).join(". "),
      };
    case "interval-ended":
      return { title: book("entry.interval-ended"), words: entry.body.reason };
    case "calendar-set":
    case "holidays-set":
    case "interval-overridden":
    case "override-ended":
    case "particulars-changed":
    case "team-set":
    case "keeper-set":
    case "time-set":
      return {
        title: book(`entry.${entry.kind}`),
        words: planningWords(entry, titles),
      };
    default: {
      const never: never = entry;
      return { title: (never as Entry).kind };
    }
  }
};

/** Right of an entry: when it happened, when it was received, and who wrote it. */
export const entryWhen = ({ entry, leaf, authorName }: HistoryEntry, ofAsset: boolean) => {
  const who = authorName || book("entry.nobody");
  const day = printDay(entry.civilDate);
  if (ofAsset) return [day, who];
  const sameDay = leaf.receivedAt.slice(0, 10) === entry.civilDate;
  const time = entry.happenedAt === null ? book("entry.day-only") : clockTime(entry.happenedAt);
  const at = sameDay ? time : `${day}, ${time}`;
  return [book("entry.received", { at, received: clockTime(leaf.receivedAt) }), who];
};
