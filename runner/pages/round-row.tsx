import type { CivilDate, SiteBundle } from "@roundbook/schemas";
import { printQuantity, Row, unbroken, verdictWords } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { DueOf } from "./due-of.tsx";
import { printDay } from "./entry-words.tsx";
import { newestIssue } from "./newest-issue.ts";
import type { RoundRow } from "./round-model.ts";

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
  return [first, printDay(last.on)];
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
