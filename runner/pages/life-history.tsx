import type { ChecklistRow, CivilDate, HistoryEntry } from "@roundbook/schemas";
import { Gap, LeafWords, Loading, PlaceHeading, Rows, WordButton } from "../form/index.ts";
import { book } from "../messages/book.ts";
import { EntryList } from "./entry-list.tsx";
import { gapWords } from "./gap-words.ts";
import type { HistoryGap } from "./life-gaps.ts";
import { usePages } from "./use-pages.ts";
import { useTitles } from "./use-titles.ts";

/** Every entry of an asset, newest first, read from the server page by page. */
export const History = ({
  asset,
  gaps,
  past,
  checklists,
  today,
  onFollow,
}: {
  readonly asset: string;
  /** What was missed, with the whole history that tells it. */
  readonly gaps: readonly HistoryGap[];
  readonly past: readonly HistoryEntry[];
  readonly checklists: readonly ChecklistRow[];
  readonly today: CivilDate;
  readonly onFollow: (href: string) => void;
}) => {
  const history = usePages<HistoryEntry>(`/api/assets/${asset}/history?limit=30`);
  const rows = history.data?.pages.flatMap((page) => page.rows) ?? [];
  const titles = useTitles(rows);
  return (
    <section>
      <PlaceHeading
        title={book("life.history")}
        aside={
          history.data &&
          (history.hasNextPage
            ? book("life.latest", { count: rows.length })
            : book("life.entries", { count: rows.length }))
        }
      />
      {history.isPending && <Loading label={book("life.loading")} rows={3} />}
      {history.isError && rows.length === 0 && (
        <LeafWords>
          <p>{book("life.history-offline")}</p>
          <WordButton onClick={() => void history.refetch()}>{book("page.retry")}</WordButton>
        </LeafWords>
      )}
      <Rows>
        <EntryList
          {...{ rows, titles, checklists, onFollow }}
          ofAsset
          before={(entry) =>
            gaps
              .filter(({ after }) => after === entry)
              .map((gap) => <Gap key={gap.interval}>{gapWords(gap, past, today)}</Gap>)
          }
        />
      </Rows>
      {gaps.length > 0 && (
        <LeafWords>
          <p className="second">{book("gap.by-now")}</p>
        </LeafWords>
      )}
      {history.hasNextPage && (
        <LeafWords>
          <WordButton disabled={history.isFetching} onClick={() => void history.fetchNextPage()}>
            {book("life.older")}
          </WordButton>
        </LeafWords>
      )}
    </section>
  );
};
