import type { DefectRow } from "@roundbook/schemas";
import { useState } from "react";
import { useLocation } from "wouter";
import {
  Due,
  dueWords,
  Empty,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  Standing,
  TitleBlock,
  WordButton,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { printDay } from "./day-words.ts";
import { DefectSheet } from "./defect-sheet.tsx";
import { useDevice } from "./device.tsx";
import { dayOf, todayAt } from "./due-of.tsx";
import { StepsOf } from "./life-due.tsx";
import { RunnerPage } from "./runner-page.tsx";
import { useBundles } from "./use-bundle.ts";

const GRADES = ["danger-now", "by-a-date", "observation"] as const;

const Age = ({
  defect,
  today,
}: {
  readonly defect: DefectRow;
  readonly today: ReturnType<typeof dayOf>;
}) => {
  const raised = dayOf(defect.raisedOn);
  if (defect.by !== null) {
    const by = dayOf(defect.by);
    const window = { earliest: raised, due: by, latest: by };
    return (
      <Due {...window} today={today}>
        {dueWords(window, today)}
      </Due>
    );
  }
  const days = today - raised;
  return (
    <Standing strong={defect.grade === "danger-now"}>
      {days < 1 ? book("defects.today") : book("defects.age", { count: days })}
    </Standing>
  );
};

/** What is wrong and not yet verified right, worst first. */
export const DefectsPage = () => {
  const { now, settings, person } = useDevice();
  const [, navigate] = useLocation();
  const bundles = useBundles();
  const [site, setSite] = useState<string | null>(null);
  const [opened, setOpened] = useState<string | null>(null);
  const kept = bundles.data?.map((row) => row.bundle) ?? [];
  const shown = kept.filter((one) => site === null || one.site.id === site);
  const open = shown.flatMap((bundle) =>
    bundle.defects
      .filter((defect) => defect.step !== "verified")
      .map((defect) => ({ defect, bundle })),
  );
  const dangers = open.filter(({ defect }) => defect.grade === "danger-now").length;
  const sites = [null, ...kept.map((one) => one.site.id)];
  const current = open.find(({ defect }) => defect.id === opened);
  return (
    <RunnerPage current="defects">
      <TitleBlock
        title={book("defects.title")}
        second={book("defects.open", { open: open.length, dangers })}
        actions={
          kept.length > 1 && (
            <WordButton
              onClick={() => setSite(sites[(sites.indexOf(site) + 1) % sites.length] ?? null)}
            >
              {kept.find((one) => one.site.id === site)?.site.name ?? book("defects.all-sites")}
            </WordButton>
          )
        }
      />
      {bundles.isPending && <Loading label={book("register.loading")} />}
      {bundles.data && open.length === 0 && (
        <Empty sentence={book("defects.none")}>
          <p>{book("defects.none-next")}</p>
        </Empty>
      )}
      {GRADES.map((grade) => {
        const rows = open
          .filter(({ defect }) => defect.grade === grade)
          .sort((a, b) =>
            (a.defect.by ?? a.defect.raisedOn).localeCompare(b.defect.by ?? b.defect.raisedOn),
          );
        if (rows.length === 0) return null;
        return (
          <section key={grade}>
            <PlaceHeading title={book(`defects.${grade}`)} aside={String(rows.length)} />
            <Rows>
              {rows.map(({ defect, bundle }) => (
                <Row
                  key={defect.id}
                  number={String(defect.number)}
                  name={`${defect.assetDescription}: ${defect.title}`}
                  second={`${defect.assetNumber} ${bundle.site.name}`}
                  more={
                    <>
                      <StepsOf defect={defect} />
                      {defect.passedSince && (
                        <span className="second">
                          {book("defects.passed-since", { day: printDay(defect.passedSince) })}
                        </span>
                      )}
                    </>
                  }
                  due={
                    <Age
                      defect={defect}
                      today={todayAt(bundle.site.zone, now(), settings.clockOffset)}
                    />
                  }
                  onPress={
                    person.role === "auditor"
                      ? () => navigate(`/asset/${defect.asset}`)
                      : () => setOpened(defect.id)
                  }
                />
              ))}
            </Rows>
          </section>
        );
      })}
      {current && (
        <DefectSheet
          defect={current.defect}
          zone={current.bundle.site.zone}
          onClose={() => setOpened(null)}
        />
      )}
    </RunnerPage>
  );
};
