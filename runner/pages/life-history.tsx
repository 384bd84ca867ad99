import type { ChecklistRow, CivilDate } from "@roundbook/schemas";
import { useState } from "react";
import { Gap, LeafWords, Loading, PlaceHeading, Rows, WordButton } from "../form/index.ts";
import { book } from "../messages/book.ts";
import { EntryList } from "./entry-list.tsx";
import { gapWords } from "./gap-words.ts";
import type { HistoryGap } from "./life-gaps.ts";
import type { usePast } from "./use-past.ts";
import { useTitles } from "./use-titles.ts";

/** What one more look shows. */
const AT_ONCE = 30;

/** Every entry of an asset, newest first: from the server, or as this device keeps them. */
export const History = ({
  history,
  gaps,
  checklists,
  today,
  onFollow,
}: {
  readonly history: ReturnType<typeof usePast>;
  /** What was missed, with the whole history that tells it. */
  readonly gaps: readonly HistoryGap[];
  readonly checklists: readonly ChecklistRow[];
  readonly today: CivilDate;
  readonly onFollow: (href: string) => void;
}) => {
  const [shown, setShown] = useState(AT_ONCE);
  const past = history.data;
  const all = past?.rows ?? [];
  const rows = all.slice(0, shown);
  const titles = useTitles(rows);
  return (
    <section>
      <PlaceHeading
        title={book("life.history")}
        aside={past && book(past.more ? "life.latest" : "life.entries", { count: all.length })}
      />
      {history.isPending && <Loading label={book("life.loading")} rows={3} />}
      {history.isError && (
        <LeafWords>
          <p>{book("life.history-offline")}</p>
          <WordButton onClick={() => void history.refetch()}>{book("page.retry")}</WordButton>
        </LeafWords>
      )}
      {past?.kept && (
        <LeafWords>
          <p className="second">{book("life.history-kept")}</p>
        </LeafWords>
      )}
      <Rows>
        <EntryList
          {...{ rows, titles, checklists, onFollow }}
          ofAsset
          before={(entry) =>
            gaps
              .filter(({ after }) => after === entry)
              .map((gap) => <Gap key={gap.interval}>{gapWords(gap, all, today)}</Gap>)
          }
        />
      </Rows>
      {gaps.length > 0 && (
        <LeafWords>
          <p className="second">{book("gap.by-now")}</p>
        </LeafWords>
      )}
      {all.length > shown && (
        <LeafWords>
          <WordButton onClick={() => setShown(shown + AT_ONCE)}>{book("life.older")}</WordButton>
        </LeafWords>
      )}
    </section>
  );
};
