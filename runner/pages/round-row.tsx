import type { CivilDate, LastResult, SiteBundle } from "@roundbook/schemas";
import { memo } from "react";
import { dayAndMonth, printQuantity, Row, unbroken, verdictWords } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { printDay } from "./day-words.ts";
import { DueOf, dayOf, lackingOf } from "./due-of.tsx";
import { defectAt, issueAt, lastAt } from "./round-index.ts";
import type { RoundRow } from "./round-model.ts";

const awaitedWords = (last: LastResult | undefined): string | undefined =>
  last?.awaited ? w("round.awaited", { day: printDay(last.on) }) : undefined;

/** The day of an inspection that waits for the result of a sample, as long as it does. */
export const awaitedOf = (
  results: readonly LastResult[],
  { asset, checklist }: { readonly asset: string; readonly checklist: string },
): string | undefined =>
  awaitedWords(results.find((one) => one.asset === asset && one.checklist === checklist));

const lastWords = (last: LastResult | undefined, today: CivilDate): string[] | undefined => {
  if (!last) return undefined;
  const verdict = last.overall
    ? verdictWords(`verdict.${last.overall}`)
    : verdictWords("verdict.none");
  const readings = Object.values(last.readings);
  const [only] = readings;
  const first =
    readings.length === 1 && only
      ? `${printQuantity(only.value, only.unit, { comparator: only.comparator })}, ${verdict.toLowerCase()}`
      : verdict;
  return [first, awaitedWords(last) ?? dayAndMonth(dayOf(last.on), today)];
};

/** What waits for a result was done, though it does not count yet. */
const neverDone = (last: LastResult | undefined) =>
  awaitedWords(last) === undefined && w("due.never-done");

/** Titles of the particulars of an asset type. */
export const titlesIn =
  (bundle: Pick<SiteBundle, "assetTypes"> | undefined, assetType: string) =>
  (name: string): string =>
    bundle?.assetTypes.find((one) => one.assetType === assetType)?.particulars[name]?.title ?? name;

/** What has to be said of a row beside its date. */
const standingWords = (bundle: SiteBundle, { status, state, due }: RoundRow) => {
  if (state !== "to-do" && state !== "unfinished") return undefined;
  if (status === "blocked") return <strong className="danger">{w("due.blocked")}</strong>;
  const lacking =
    status === "undecided" ? lackingOf(due, titlesIn(bundle, due.assetType)) : undefined;
  return lacking && <strong>{lacking}</strong>;
};

/** One asset of the round: number | what and which checklist | last result | when it is due. */
export const RoundRowView = memo(function RoundRowView({
  row,
  bundle,
  today,
  onFollow,
}: {
  readonly row: RoundRow;
  readonly bundle: SiteBundle;
  readonly today: CivilDate;
  readonly onFollow: (href: string) => void;
}) {
  const { asset, due, state } = row;
  const last = lastAt(bundle, due);
  const issue = issueAt(bundle, due.checklist);
  const defect = defectAt(bundle, asset.id);
  const title = issue?.document.title ?? due.intervalTitle;
  const second = [
    title,
    state === "unfinished" && w("round.unfinished"),
    state === "to-do" && row.status === "never-done" && neverDone(last),
  ];
  const standing = standingWords(bundle, row);
  const more = (
    <>
      {standing && <span className="row-second">{standing}</span>}
      {defect && w("round.open-defect", { number: defect.number, title: defect.title })}
    </>
  );
  return (
    <Row
      number={asset.number}
      name={unbroken(asset.description)}
      second={second.filter(Boolean).join(", ")}
      more={standing || defect ? more : undefined}
      last={lastWords(last, today)}
      due={<DueOf asset={asset} due={due} today={today} />}
      href={issue ? `/fill/${asset.id}/${issue.hash}` : `/asset/${asset.id}`}
      onFollow={onFollow}
    />
  );
});
