import type { HistoryEntry } from "@roundbook/schemas";
import { useLocation } from "wouter";
import {
  Empty,
  LeafWords,
  Loading,
  longDay,
  MarginBlock,
  PlaceHeading,
  Rows,
  TitleBlock,
  WordButton,
  WordLink,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { useDevice } from "./device.tsx";
import { dayOf, todayAt } from "./due-of.tsx";
import { EntryList } from "./entry-list.tsx";
import { RunnerPage } from "./runner-page.tsx";
import { usePages } from "./use-pages.ts";
import { useTitles } from "./use-titles.ts";

const byDay = (rows: readonly HistoryEntry[]): (readonly [string, HistoryEntry[]])[] => {
  const days: [string, HistoryEntry[]][] = [];
  for (const row of rows) {
    const day = row.leaf.receivedAt.slice(0, 10);
    const last = days.at(-1);
    if (last?.[0] === day) last[1].push(row);
    else days.push([day, [row]]);
  }
  return days;
};

export const LogbookPage = () => {
  const { now, settings, person } = useDevice();
  const [, navigate] = useLocation();
  const log = usePages<HistoryEntry>("/api/logbook?limit=50");
  const rows = log.data?.pages.flatMap((page) => page.rows) ?? [];
  const titles = useTitles(rows);
  const today = todayAt("UTC", now(), settings.clockOffset);
  return (
    <RunnerPage
      current="logbook"
      marginalia={
        <>
          <MarginBlock title={book("logbook.proves")}>
            <p>{book("logbook.proves-words")}</p>
          </MarginBlock>
          <MarginBlock title={book("logbook.cannot")}>
            <p>{book("logbook.cannot-words")}</p>
          </MarginBlock>
        </>
      }
    >
      <TitleBlock
        title={book("logbook.title")}
        second={book("logbook.about")}
        actions={
          person.role === "inspector" ? undefined : (
            <WordLink href="/api/export">{book("logbook.take-away")}</WordLink>
          )
        }
      />
      {log.isPending && <Loading label={book("logbook.loading")} />}
      {log.isError && rows.length === 0 && (
        <Empty
          sentence={book("logbook.offline")}
          actions={<WordButton onClick={() => void log.refetch()}>{book("page.retry")}</WordButton>}
        />
      )}
      {byDay(rows).map(([day, entries]) => (
        <section key={day}>
          <PlaceHeading title={longDay(dayOf(day), today)} aside={String(entries.length)} />
          <Rows>
            <EntryList rows={entries} titles={titles} ofAsset={false} onFollow={navigate} />
          </Rows>
        </section>
      ))}
      {log.hasNextPage && (
        <LeafWords>
          <WordButton disabled={log.isFetching} onClick={() => void log.fetchNextPage()}>
            {book("logbook.older")}
          </WordButton>
        </LeafWords>
      )}
    </RunnerPage>
  );
};
