import { Contents, Page, WordButton, WordLink } from "@roundbook/runner/form";
import type { ReactNode } from "react";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { useAssetTypes, useChecklists, useDrafts, useIntervals, usePlaces } from "./queries.ts";
import { useSession } from "./session.tsx";
import { useFacing } from "./use-facing.ts";

export type Chapter = "checklists" | "asset-types" | "intervals" | "plan" | "estate";

const CHAPTERS = [
  ["checklists", "/", "app.checklists"],
  ["asset-types", "/asset-types", "app.asset-types"],
  ["intervals", "/intervals", "app.intervals"],
  ["plan", "/plan", "app.plan"],
  ["estate", "/estate", "app.estate-page"],
] as const;

export interface DeskPageProps {
  readonly current: Chapter;
  readonly dock?: ReactNode;
  /** What the left page does, shown at work. */
  readonly facing?: ReactNode;
  /** Where the two pages do not fit side by side: whether the facing one is looked at. */
  readonly turned?: boolean;
  onTurn?(): void;
  readonly children: ReactNode;
}

/** How many of each the estate has; nothing is printed before it is known. */
const useCounts = (): Partial<Record<Chapter, string>> => {
  const issued = useChecklists().data;
  const drafts = useDrafts().data;
  const sites = usePlaces().data?.filter(({ level }) => level === "site").length;
  const known = new Set([...(issued ?? []).map((row) => row.id)]);
  for (const draft of drafts ?? []) known.add(draft.checklist);
  return {
    checklists: issued && drafts && String(known.size),
    "asset-types": useAssetTypes().data?.length.toString(),
    intervals: useIntervals().data?.length.toString(),
    estate: sites === undefined ? undefined : d("app.sites", { count: sites }),
  };
};

/** An open book: contents, the page, and the facing page that shows what it does. */
export const DeskPage = (props: DeskPageProps) => {
  const { current, dock, facing, turned = false, onTurn, children } = props;
  const { person, estate } = useSession();
  const [, navigate] = useLocation();
  const beside = useFacing();
  const counts = useCounts();
  const looking = facing !== undefined && !beside && turned;
  return (
    <Page
      designer
      dock={looking ? undefined : dock}
      facing={beside ? facing : undefined}
      contents={
        <Contents
          label={d("app.contents")}
          brand={d("app.name")}
          beneath={<span>{d("app.estate", { estate: estate.name })}</span>}
          entries={CHAPTERS.map(([chapter, href, word]) => ({
            href: `/designer${href}`,
            word: d(word),
            current: chapter === current,
            count: counts[chapter],
          }))}
          foot={
            <>
              <p>{person.name}</p>
              <p>{d(`role.${person.role}`)}</p>
              <p>
                <WordLink href="/" quiet>
                  {d("app.rounds")}
                </WordLink>
              </p>
            </>
          }
          onFollow={(href) => navigate(href.replace(/^\/designer/, "") || "/")}
        />
      }
    >
      {looking ? (
        <div className="turned">
          <p>
            <WordButton onClick={onTurn}>{d("app.turn-back")}</WordButton>
          </p>
          {facing}
        </div>
      ) : (
        children
      )}
    </Page>
  );
};

/** Words that lead to what a wide page shows anyway. */
export const NarrowOnly = ({ children }: { readonly children: ReactNode }) =>
  useFacing() ? null : children;
