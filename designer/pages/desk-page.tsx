import { Contents, Page, WordLink } from "@roundbook/runner/form";
import type { ReactNode } from "react";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { useSession } from "./session.tsx";

export type Chapter = "checklists" | "asset-types" | "intervals" | "estate";

const CHAPTERS = [
  ["checklists", "/", "app.checklists"],
  ["asset-types", "/asset-types", "app.asset-types"],
  ["intervals", "/intervals", "app.intervals"],
  ["estate", "/estate", "app.estate-page"],
] as const;

export interface DeskPageProps {
  readonly current: Chapter;
  readonly dock?: ReactNode;
  /** What the left page does, shown at work. */
  readonly facing?: ReactNode;
  readonly children: ReactNode;
}

/** An open book: contents, the page, and the facing page that shows what it does. */
export const DeskPage = ({ current, dock, facing, children }: DeskPageProps) => {
  const { person, estate } = useSession();
  const [, navigate] = useLocation();
  return (
    <Page
      designer
      dock={dock}
      facing={facing}
      contents={
        <Contents
          label={d("app.contents")}
          brand={d("app.name")}
          beneath={<span>{d("app.estate", { estate: estate.name })}</span>}
          entries={CHAPTERS.map(([chapter, href, word]) => ({
            href: `/designer${href}`,
            word: d(word),
            current: chapter === current,
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
      {children}
    </Page>
  );
};
