import type { CivilDate, LastResult, SiteBundle } from "@roundbook/schemas";
import { printQuantity, Row, unbroken, verdictWords } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { DueOf } from "./due-of.tsx";
import { printDay } from "./entry-words.tsx";
import { newestIssue } from "./newest-issue.ts";
import type { RoundRow } from "./round-model.ts";

/** The day of an inspection that waits for the result of a sample, as long as it does. */
export const awaitedOf = (
  results: readonly LastResult[],
  { asset, checklist }: { readonly asset: string; readonly checklist: string },
): string | undefined => {
  const last = results.find((one) => one.asset === asset && one.checklist === checklist);
  return last?.awaited ? w("round.awaited", { day: printDay(last.on) }) : undefined;
};

const lastOf = (bundle: SiteBundle, row: RoundRow): string[] | undefined => {
  const last = bundle.lastResults.find(
    (one) => one.asset === row.asset.id && one.checklist === row.due.checklist,
  );
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
  return [first, awaitedOf(bundle.lastResults, row.due) ?? printDay(last.on)];
};

/** One asset of the round: number | what and which checklist | last result | when it is due. */
export const RoundRowView = ({
  row,
  bundle,
  today,
  onFollow,
}: {
  readonly row: RoundRow;
  readonly bundle: SiteBundle;
  readonly today: CivilDate;
  readonly onFollow: (href: string) => void;
}) => {
  const { asset, due, state } = row;
  const issue = newestIssue(bundle.checklists, due.checklist);
  const defect = bundle.defects.find((one) => one.asset === asset.id && one.step !== "verified");
  const title = issue?.document.title ?? due.intervalTitle;
  return (
    <Row
      number={asset.number}
      name={unbroken(asset.description)}
      second={state === "unfinished" ? `${title}, ${w("round.unfinished")}` : title}
      more={defect && w("round.open-defect", { number: defect.number, title: defect.title })}
      last={lastOf(bundle, row)}
      due={<DueOf asset={asset} due={due} today={today} />}
      href={issue ? `/fill/${asset.id}/${issue.hash}` : `/asset/${asset.id}`}
      onFollow={onFollow}
    />
  );
};
