import type { AssetRow, AssetTypeRow, DefectRow, DueRow, SiteBundle } from "@roundbook/schemas";
import { particularsInOrder } from "@roundbook/schemas";
import { useLocation } from "wouter";
import {
  ButtonLink,
  Buttons,
  Facts,
  LeafWords,
  MarginBlock,
  PlaceHeading,
  printQuantity,
  Row,
  Rows,
  TitleBlock,
  unbroken,
  useWide,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { useDevice } from "./device.tsx";
import { todayAt } from "./due-of.tsx";
import { AssetHead } from "./life-asset.tsx";
import { LifeDue, StepsOf } from "./life-due.tsx";
import { History } from "./life-history.tsx";
import { PaperLinks } from "./life-paper.tsx";
import { LifePlot } from "./life-plot.tsx";
import { newestIssue } from "./newest-issue.ts";
import { RunnerPage } from "./runner-page.tsx";
import { useLifePast } from "./use-life-past.ts";

const printParticular = (type: AssetTypeRow | undefined, name: string, value: unknown) => {
  const unit = type?.particulars[name]?.unit;
  if (typeof value === "boolean") return book(value ? "particular.yes" : "particular.no");
  return typeof value === "number" ? printQuantity(value, unit) : String(value);
};

/** All that the book holds of one asset. */
export const LifeOf = (props: {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly defects: readonly DefectRow[];
  /** The site it stands at, where this device keeps it. */
  readonly bundle: SiteBundle | undefined;
}) => {
  const { asset, due, bundle } = props;
  const { now, settings, person } = useDevice();
  const [, navigate] = useLocation();
  const wide = useWide();
  const type = bundle?.assetTypes.find((row) => row.assetType === asset.assetType);
  const defects = props.defects.filter((one) => one.step !== "verified");
  const today = todayAt(bundle?.site.zone ?? "UTC", now(), settings.clockOffset);
  const past = useLifePast(asset, bundle, today);
  const checklists = bundle?.checklists ?? [];
  const offered = (type?.checklists ?? []).flatMap((one) => {
    const issue = newestIssue(checklists, one);
    return issue ? [issue] : [];
  });
  const definitions = type?.particulars ?? {};
  const known = particularsInOrder(definitions).map(([name]) => name);
  const particulars = [...new Set([...known, ...Object.keys(asset.particulars)])].flatMap(
    (name) => {
      const value = asset.particulars[name];
      return value === undefined ? [] : [[name, value] as const];
    },
  );
  const checks = offered.map((issue, at) => (
    <ButtonLink
      key={issue.hash}
      kind={at === 0 ? "primary" : "secondary"}
      href={`/fill/${asset.id}/${issue.hash}`}
      onFollow={navigate}
    >
      {offered.length === 1 ? book("life.check") : issue.document.title}
    </ButtonLink>
  ));
  return (
    <RunnerPage
      current="register"
      dock={
        wide || person.role === "auditor" || offered.length === 0 ? undefined : (
          <Buttons>{checks.slice(0, 2)}</Buttons>
        )
      }
      marginalia={
        <>
          {wide && person.role !== "auditor" && checks}
          <MarginBlock title={book("life.particulars")}>
            {particulars.length === 0 ? (
              <p>{book("life.none")}</p>
            ) : (
              <Facts
                facts={particulars.map(([name, value]) => ({
                  name: type?.particulars[name]?.title ?? name,
                  value: printParticular(type, name, value),
                }))}
              />
            )}
          </MarginBlock>
        </>
      }
    >
      <TitleBlock
        number={asset.number}
        title={unbroken(asset.description)}
        second={asset.path.join(" › ")}
      />
      <AssetHead asset={asset} />
      <LifeDue {...{ asset, due, bundle, today }} onFollow={navigate} />
      <PaperLinks asset={asset.id} issues={offered} onFollow={navigate} />
      {past.series.map((series) => (
        <LifePlot
          key={`${series.checklist}${series.point}`}
          series={series}
          gaps={past.gapsOf(series.checklist)}
        />
      ))}
      <section>
        <PlaceHeading title={book("life.defects")} aside={String(defects.length)} />
        {defects.length === 0 && <LeafWords>{book("life.no-defects")}</LeafWords>}
        <Rows>
          {defects.map((defect) => (
            <Row
              key={defect.id}
              number={String(defect.number)}
              name={defect.title}
              more={<StepsOf defect={defect} />}
              href={`/defects#${defect.number}`}
              onFollow={navigate}
            />
          ))}
        </Rows>
      </section>
      <History
        history={past.history}
        gaps={past.gaps}
        checklists={checklists}
        today={today}
        onFollow={navigate}
      />
    </RunnerPage>
  );
};
