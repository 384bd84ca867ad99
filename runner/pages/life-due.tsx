import type { AssetRow, ChecklistRow, DefectRow, DueRow, LastResult } from "@roundbook/schemas";
import {
  DefectSteps,
  Due,
  dueWords,
  LeafWords,
  PlaceHeading,
  Row,
  Rows,
  useMessages,
  whyWords,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { printDay } from "./day-words.ts";
import { dayOf } from "./due-of.tsx";
import { newestIssue } from "./newest-issue.ts";
import { awaitedOf } from "./round-row.tsx";

type Today = ReturnType<typeof dayOf>;

/** Every window of the asset, each with the sentence that explains it. */
export const LifeDue = ({
  asset,
  due,
  checklists,
  lastResults,
  today,
  onFollow,
}: {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly checklists: readonly ChecklistRow[];
  readonly lastResults: readonly LastResult[];
  readonly today: Today;
  readonly onFollow: (href: string) => void;
}) => {
  const messages = useMessages();
  return (
    <section>
      <PlaceHeading title={book("life.due")} />
      {due.length === 0 && (
        <LeafWords>
          <p>{book("life.not-due")}</p>
          <p className="second">{book("life.not-due-next")}</p>
        </LeafWords>
      )}
      <Rows>
        {due.map((row) => {
          const window = {
            earliest: dayOf(row.earliest),
            due: dayOf(row.due),
            latest: dayOf(row.latest),
          };
          const awaited = awaitedOf(lastResults, row);
          const issue = newestIssue(checklists, row.checklist);
          return (
            <Row
              key={row.interval}
              name={row.intervalTitle}
              second={
                awaited && row.why.code === "never-done"
                  ? undefined
                  : whyWords(messages, row.why, today)
              }
              more={
                <span className="second">
                  {[
                    row.lastDone && book("life.last-done", { day: printDay(row.lastDone) }),
                    awaited && `${awaited.charAt(0).toUpperCase()}${awaited.slice(1)}.`,
                  ]
                    .filter(Boolean)
                    .join(" ") || book("life.never-done")}
                </span>
              }
              due={
                <Due {...window} today={today}>
                  {dueWords(window, today)}
                </Due>
              }
              href={issue ? `/fill/${asset.id}/${issue.hash}` : undefined}
              onFollow={onFollow}
            />
          );
        })}
      </Rows>
    </section>
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
