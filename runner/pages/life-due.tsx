import type { AssetRow, CivilDate, DefectRow, DueRow, SiteBundle } from "@roundbook/schemas";
import {
  DefectSteps,
  dayAndMonth,
  LeafWords,
  PlaceHeading,
  Row,
  Rows,
  useMessages,
  whyWords,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { w } from "../messages/page.ts";
import { DueDays, dayOf, isDated, lackingOf, standingOn } from "./due-of.tsx";
import { newestIssue } from "./newest-issue.ts";
import { awaitedOf, titlesIn } from "./round-row.tsx";

const sentence = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

/** Every window of the asset, each with the sentence that explains it. */
export const LifeDue = ({
  asset,
  due,
  bundle,
  today,
  onFollow,
}: {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly bundle: SiteBundle | undefined;
  readonly today: CivilDate;
  readonly onFollow: (href: string) => void;
}) => (
  <section>
    <PlaceHeading title={book("life.due")} />
    {due.length === 0 && (
      <LeafWords>
        <p>{book("life.not-due")}</p>
        <p className="second">{book("life.not-due-next")}</p>
      </LeafWords>
    )}
    <Rows>
      {due.map((row) => (
        <WindowRow key={row.interval} {...{ asset, row, bundle, today, onFollow }} />
      ))}
    </Rows>
  </section>
);

const WindowRow = ({
  asset,
  row,
  bundle,
  today,
  onFollow,
}: {
  readonly asset: AssetRow;
  readonly row: DueRow;
  readonly bundle: SiteBundle | undefined;
  readonly today: CivilDate;
  readonly onFollow: (href: string) => void;
}) => {
  const messages = useMessages();
  const status = standingOn(row, today);
  const awaited = awaitedOf(bundle?.lastResults ?? [], row);
  const issue = newestIssue(bundle?.checklists ?? [], row.checklist);
  const titles = titlesIn(bundle, row.assetType);
  const day = (iso: string) => dayAndMonth(dayOf(iso), today);
  const lacking = status === "undecided" ? lackingOf(row, titles) : undefined;
  const more = [
    row.lastDone && book("life.last-done", { day: day(row.lastDone) }),
    awaited && sentence(awaited),
    isDated(row) && status === "not-yet" && book("life.earliest", { day: day(row.earliest) }),
  ].filter(Boolean);
  return (
    <Row
      name={row.intervalTitle}
      second={
        awaited && row.why.code === "never-done"
          ? undefined
          : whyWords(messages, row.why, today, titles)
      }
      more={
        <>
          {status === "blocked" && <strong className="danger">{w("due.blocked")}.</strong>}
          {lacking && <strong>{sentence(lacking)}</strong>}{" "}
          <span className="second">{more.join(" ") || book("life.never-done")}</span>
        </>
      }
      due={isDated(row) ? <DueDays due={row} today={today} /> : undefined}
      href={issue ? `/fill/${asset.id}/${issue.hash}` : undefined}
      onFollow={onFollow}
    />
  );
};

const DONE = { raised: 1, deferred: 1, "made-safe": 2, repaired: 3, verified: 4 } as const;

/** The four steps of a defect and the one that comes next. */
export const StepsOf = ({ defect }: { readonly defect: DefectRow }) => {
  const { step, grade } = defect;
  const unsafe = grade === "danger-now" && (step === "raised" || step === "deferred");
  const next =
    step === "repaired"
      ? book("defects.next-verify")
      : step === "verified"
        ? undefined
        : unsafe
          ? book("defects.next-made-safe")
          : book("defects.next-repair");
  return (
    <DefectSteps done={DONE[step]} says={book(`defects.${step}`)} next={next} danger={unsafe} />
  );
};
