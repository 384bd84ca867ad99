import type { AssetRow, ChecklistRow } from "@roundbook/schemas";
import { useLocation, useParams, useSearch } from "wouter";
import {
  BlankSheet,
  Empty,
  LeafWords,
  Loading,
  Page,
  StateLine,
  TitleBlock,
  unbroken,
  useJudge,
  WordButton,
  WordLink,
  WordList,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import { paper } from "../messages/paper.ts";
import { useDevice } from "./device.tsx";
import { useBundles } from "./use-bundle.ts";
import { useIssue } from "./use-titles.ts";

/** A blank sheet of any checklist, for an asset where one is named. */
export const SheetPage = () => {
  const { hash = "" } = useParams<{ hash: string }>();
  const asset = new URLSearchParams(useSearch()).get("asset");
  const issue = useIssue(hash);
  const bundles = useBundles().data ?? [];
  const found = bundles.flatMap((row) => row.bundle.assets).find(({ id }) => id === asset);
  const [, navigate] = useLocation();
  if (issue.data) return <Sheet issue={issue.data} asset={found} />;
  return (
    <Page>
      {issue.isPending ? (
        <Loading label={w("app.opening")} />
      ) : (
        <Empty
          sentence={paper("sheet.unknown")}
          actions={
            <WordLink href="/register" onFollow={navigate}>
              {paper("sheet.back")}
            </WordLink>
          }
        />
      )}
    </Page>
  );
};

const Heads = ({ asset }: { readonly asset: AssetRow | undefined }) => {
  const heads = [
    ...(asset ? [] : [paper("sheet.asset"), paper("sheet.place")]),
    paper("sheet.date"),
    paper("sheet.name"),
    paper("sheet.signature"),
    paper("sheet.instrument"),
  ];
  return (
    <div className="blank-heads">
      {heads.map((head) => (
        <p key={head} className="blank-line">
          {head} <span className="blank-rule" aria-hidden="true" />
        </p>
      ))}
    </div>
  );
};

const Sheet = ({
  issue,
  asset,
}: {
  readonly issue: ChecklistRow;
  readonly asset: AssetRow | undefined;
}) => {
  const { settings } = useDevice();
  const judge = useJudge(issue.document);
  return (
    <Page>
      <TitleBlock
        number={asset?.number}
        title={unbroken(asset?.description ?? issue.document.title)}
        second={
          asset
            ? `${paper("sheet.second", { title: issue.document.title, issue: issue.issue })}. ${asset.path.join(" › ")}`
            : undefined
        }
        size="fill"
      />
      <div className="only-screen">
        <StateLine>{paper("sheet.about")}</StateLine>
        <LeafWords>
          <WordList>
            <WordButton onClick={() => window.print()}>{paper("sheet.print")}</WordButton>
            <WordButton onClick={() => window.history.back()}>{paper("sheet.back")}</WordButton>
          </WordList>
        </LeafWords>
      </div>
      <LeafWords>
        <Heads asset={asset} />
        <p className="second">
          {paper("sheet.caution")}{" "}
          {paper("sheet.hash", { issue: issue.issue, hash: issue.hash.slice(0, 16) })}
        </p>
      </LeafWords>
      {judge.state === "ready" ? (
        <BlankSheet
          document={issue.document}
          judge={judge.judge}
          particulars={asset?.particulars ?? {}}
          language={settings.language ?? undefined}
        />
      ) : (
        <Loading label={w("app.opening")} />
      )}
    </Page>
  );
};
