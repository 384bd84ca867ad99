import {
  type Answer,
  type Answers,
  type BodyOf,
  type HistoryEntry,
  isSample,
} from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useLocation, useParams } from "wouter";
import {
  Empty,
  Facts,
  InspectionView,
  LeafWords,
  Loading,
  MarginBlock,
  PaperPhotos,
  type PhotoDoor,
  printNumber,
  StateLine,
  TitleBlock,
  verdictWords,
  WordButton,
  WordLink,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { paper } from "../messages/paper.ts";
import { pastEntry } from "../offline/past.ts";
import { getJson, Unreachable } from "../sync/client.ts";
import { clockTime, printCivil, printDay } from "./day-words.ts";
import { useDevice } from "./device.tsx";
import { entryWords } from "./entry-words.tsx";
import { LifeResults } from "./life-results.tsx";
import { judgementOf, sinceSigned } from "./overall-mark.tsx";
import { RunnerPage } from "./runner-page.tsx";
import { useIssue, useTitles } from "./use-titles.ts";

/** The answers as sealed, each sample with the newest result that came since. */
const answersNow = ({ entry, received }: HistoryEntry): Answers => {
  const answers: Record<string, Answer> = { ...(entry.body as { answers: Answers }).answers };
  for (const { body } of received?.entries ?? []) {
    const sample = answers[body.point];
    if (isSample(sample)) answers[body.point] = { ...sample, result: body.result };
  }
  return answers;
};

const SEALED: PhotoDoor = {
  photoUrl: async (sha256) => `/api/evidence/${sha256}`,
  keepPhoto: () => Promise.reject(new Error("a sealed inspection takes no photo")),
};

const SealedInspection = ({ row }: { readonly row: HistoryEntry }) => {
  const body = row.entry.body as BodyOf<"inspection">;
  const issue = useIssue(body.checklist.hash);
  const judgement = judgementOf(row);
  const answers = answersNow(row);
  const since = sinceSigned(row);
  if (!issue.data || !judgement) return <Loading label={book("life.loading")} />;
  return (
    <>
      {row.leaf.flags.includes("judgement-differs") && (
        <StateLine>
          {book("entry.server-differs", {
            server: verdictWords(
              judgement.overall ? `verdict.${judgement.overall}` : "verdict.none",
            ),
          })}
        </StateLine>
      )}
      {since && <StateLine>{since}.</StateLine>}
      <FromPaper row={row} />
      <InspectionView
        document={issue.data.document}
        issue={body.checklist.issue}
        answers={answers}
        evidence={body.evidence as never}
        declared={body.declared}
        judgement={judgement}
        contents={row.contents}
        photoUrl={SEALED.photoUrl}
      />
      <LifeResults {...{ row, judgement, answers }} document={issue.data.document} />
    </>
  );
};

/** Of a sheet keyed in afterwards: both days, both people, and the paper itself. */
const FromPaper = ({ row }: { readonly row: HistoryEntry }) => {
  const { entry, authorName, contents } = row;
  const { fromPaper } = entry.body as BodyOf<"inspection">;
  if (fromPaper === undefined) return null;
  const { doneBy, sheet = [], keyedAt } = fromPaper;
  const said = {
    day: printDay(entry.civilDate),
    keyed: printDay(keyedAt.slice(0, 10)),
    name: authorName || book("entry.nobody"),
  };
  const by = doneBy && (contents[doneBy.commit] ?? book("entry.erased"));
  return (
    <>
      <StateLine>
        {by === undefined ? paper("paper.entry", said) : paper("paper.entry-by", { ...said, by })}
      </StateLine>
      <PaperPhotos title={paper("paper.sheet")} hashes={sheet} most={0} door={SEALED} />
    </>
  );
};

/** One sealed entry: as it was written, with the wording and the limits of its own issue. */
export const EntryPage = () => {
  const { asset = "", entry = "" } = useParams<{ asset: string; entry: string }>();
  const [, navigate] = useLocation();
  const { database } = useDevice();
  const read = useQuery<HistoryEntry>({
    queryKey: ["entry", entry],
    queryFn: () =>
      getJson<HistoryEntry>(`/api/entries/${entry}`).catch(async (error) => {
        const kept = error instanceof Unreachable && (await pastEntry(database, entry));
        if (kept) return kept;
        throw error;
      }),
    retry: false,
    networkMode: "always",
    staleTime: Number.POSITIVE_INFINITY,
  });
  const row = read.data;
  const titles = useTitles(row ? [row] : []);
  const words = row ? entryWords(row, titles) : null;
  const { reason } = (row?.entry.body ?? {}) as { reason?: string };
  return (
    <RunnerPage
      current="logbook"
      marginalia={
        row && (
          <MarginBlock title={book("entry.seal")}>
            <p>
              {book("entry.sealed", {
                seq: printNumber(row.leaf.seq),
                received: `${printCivil(row.leaf.receivedAt)}, ${clockTime(row.leaf.receivedAt)}`,
              })}
            </p>
            <p className="mono">{row.leaf.hash}</p>
          </MarginBlock>
        )
      }
    >
      <TitleBlock
        number={row?.about?.number}
        title={words?.title || book("entry.title", { seq: row ? printNumber(row.leaf.seq) : "" })}
        second={
          row && (
            <>
              {row.about?.description}
              {row.about && ", "}
              {printDay(row.entry.civilDate)}, {row.authorName || book("entry.nobody")}
            </>
          )
        }
        actions={
          <WordLink href={`/asset/${asset}`} onFollow={navigate}>
            {row?.about?.number ?? book("register.title")}
          </WordLink>
        }
      />
      {read.isPending && <Loading label={book("life.loading")} />}
      {read.isError && (
        <Empty
          sentence={book("entry.offline")}
          actions={
            <WordButton onClick={() => void read.refetch()}>{book("page.retry")}</WordButton>
          }
        />
      )}
      {row && row.leaf.flags.length > 0 && (
        <StateLine>
          {book("entry.flags", {
            flags: row.leaf.flags.map((flag) => book(`flag.${flag}`)).join(", "),
          })}
        </StateLine>
      )}
      {row?.entry.kind === "inspection" && <SealedInspection row={row} />}
      {row && row.entry.kind !== "inspection" && (
        <LeafWords>
          {words?.words && <p className="written">{words.words}</p>}
          {reason && !words?.words && <p>{book("entry.reason", { reason })}</p>}
          <Facts
            facts={[
              { name: book("entry.happened"), value: printDay(row.entry.civilDate) },
              {
                name: book("entry.hash"),
                value: <span className="mono">{row.leaf.hash.slice(0, 16)}…</span>,
              },
            ]}
          />
        </LeafWords>
      )}
    </RunnerPage>
  );
};
