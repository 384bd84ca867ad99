import type { AssetRow, AssetTypeRow, DefectRow, DueRow } from "@roundbook/schemas";
import { particularsInOrder } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useLocation, useParams } from "wouter";
import {
  ButtonLink,
  Buttons,
  Empty,
  Facts,
  LeafWords,
  Loading,
  MarginBlock,
  PlaceHeading,
  printQuantity,
  Row,
  Rows,
  TitleBlock,
  unbroken,
  useWide,
  WordLink,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { w } from "../messages/page.ts";
import type { BundleRow } from "../offline/database.ts";
import { getJson } from "../sync/client.ts";
import { useDevice } from "./device.tsx";
import { todayAt } from "./due-of.tsx";
import { LifeDue, StepsOf } from "./life-due.tsx";
import { History } from "./life-history.tsx";
import { newestIssue } from "./newest-issue.ts";
import { RunnerPage } from "./runner-page.tsx";
import { useBundles } from "./use-bundle.ts";

interface Kept {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly defects: readonly DefectRow[];
  readonly type: AssetTypeRow | undefined;
  readonly bundle: BundleRow["bundle"];
}

/** A scanned or typed address may not be well formed: then it is a name that nothing has. */
export const readAddress = (text: string): string => {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
};

/** What this device keeps of an asset, by id or as `number:4033`. */
const findKept = (bundles: readonly BundleRow[], called: string): Kept | null => {
  for (const { bundle } of bundles) {
    const asset = bundle.assets.find(
      (one) => one.id === called || `number:${one.number}` === called,
    );
    if (!asset) continue;
    return {
      asset,
      due: bundle.due.filter((row) => row.asset === asset.id),
      defects: bundle.defects.filter((row) => row.asset === asset.id),
      type: bundle.assetTypes.find((row) => row.assetType === asset.assetType),
      bundle,
    };
  }
  return null;
};

const printParticular = (type: AssetTypeRow | undefined, name: string, value: unknown) => {
  const unit = type?.particulars[name]?.unit;
  if (typeof value === "boolean") return book(value ? "particular.yes" : "particular.no");
  return typeof value === "number" ? printQuantity(value, unit) : String(value);
};

/** An asset kept on no site of this device is asked of the server. */
const useAway = (called: string, needed: boolean) =>
  useQuery({
    queryKey: ["asset", called],
    enabled: needed,
    retry: false,
    networkMode: "always",
    queryFn: () =>
      getJson<{ asset: AssetRow; due: DueRow[]; defects: DefectRow[] }>(
        `/api/assets/${encodeURIComponent(called)}`,
      ),
  });

export const LifePage = () => {
  const { id = "" } = useParams<{ id: string }>();
  const called = readAddress(id);
  const { now, settings, person } = useDevice();
  const [, navigate] = useLocation();
  const bundles = useBundles();
  const kept = bundles.data ? findKept(bundles.data, called) : null;
  const away = useAway(called, bundles.data !== undefined && kept === null);
  const asset = kept?.asset ?? away.data?.asset;
  const wide = useWide();
  if (!asset) {
    const waits = bundles.isPending || away.isPending;
    return (
      <RunnerPage current="register">
        <TitleBlock title={waits ? "" : called.replace("number:", "")} />
        {waits ? (
          <Loading label={book("life.loading")} />
        ) : (
          <Empty
            sentence={book("life.unknown", { number: called.replace("number:", "") })}
            actions={
              <WordLink href="/register" onFollow={navigate}>
                {book("life.to-register")}
              </WordLink>
            }
          >
            <p>{book("life.unknown-next")}</p>
          </Empty>
        )}
      </RunnerPage>
    );
  }
  const due = kept?.due ?? away.data?.due ?? [];
  const defects = (kept?.defects ?? away.data?.defects ?? []).filter(
    (one) => one.step !== "verified",
  );
  const today = todayAt(kept?.bundle.site.zone ?? "UTC", now(), settings.clockOffset);
  const checklists = kept?.bundle.checklists ?? [];
  const offered = (kept?.type?.checklists ?? []).flatMap((one) => {
    const issue = newestIssue(checklists, one);
    return issue ? [issue] : [];
  });
  const definitions = kept?.type?.particulars ?? {};
  const known = particularsInOrder(definitions).map(([name]) => name);
  const particulars = [...new Set([...known, ...Object.keys(asset.particulars)])].flatMap(
    (name) => {
      const value = asset.particulars[name];
      return value === undefined ? [] : [[name, value] as const];
    },
  );
  return (
    <RunnerPage
      current="register"
      dock={
        !wide &&
        person.role !== "auditor" &&
        offered.length > 0 && (
          <Buttons>
            {offered.slice(0, 2).map((issue, at) => (
              <ButtonLink
                key={issue.hash}
                kind={at === 0 ? "primary" : "secondary"}
                href={`/fill/${asset.id}/${issue.hash}`}
                onFollow={navigate}
              >
                {offered.length === 1 ? book("life.check") : issue.document.title}
              </ButtonLink>
            ))}
          </Buttons>
        )
      }
      marginalia={
        <>
          {wide &&
            person.role !== "auditor" &&
            offered.map((issue, at) => (
              <ButtonLink
                key={issue.hash}
                kind={at === 0 ? "primary" : "secondary"}
                href={`/fill/${asset.id}/${issue.hash}`}
                onFollow={navigate}
              >
                {offered.length === 1 ? book("life.check") : issue.document.title}
              </ButtonLink>
            ))}
          <MarginBlock title={book("life.particulars")}>
            {particulars.length === 0 ? (
              <p>{book("life.none")}</p>
            ) : (
              <Facts
                facts={particulars.map(([name, value]) => ({
                  name: kept?.type?.particulars[name]?.title ?? name,
                  value: printParticular(kept?.type, name, value),
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
      <LeafWords>
        <p>
          <strong>{w(`status.${asset.status}`)}</strong>
          {asset.serial && (
            <>
              {". "}
              {book("life.serial")} <span className="mono">{asset.serial}</span>
            </>
          )}
        </p>
      </LeafWords>
      <LifeDue
        {...{ asset, due, checklists, today }}
        lastResults={kept?.bundle.lastResults ?? []}
        onFollow={navigate}
      />
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
      <History asset={asset.id} onFollow={navigate} />
    </RunnerPage>
  );
};
