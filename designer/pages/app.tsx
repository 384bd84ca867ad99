import { Empty, Loading, Page, WordButton, WordLink } from "@roundbook/runner/form";
import type { SessionReply } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { lazy, Suspense } from "react";
import { Route, Router, Switch } from "wouter";
import { d } from "../messages/desk.ts";
import { ChecklistsPage } from "./checklists-page.tsx";
import { getJson } from "./client.ts";
import { SessionProvider } from "./session.tsx";

const EditorPage = lazy(async () => ({
  default: (await import("../editor/editor-page.tsx")).EditorPage,
}));
const IssuePage = lazy(async () => ({ default: (await import("./issue-page.tsx")).IssuePage }));
const IssuedPage = lazy(async () => ({ default: (await import("./issued-page.tsx")).IssuedPage }));
const TypesPage = lazy(async () => ({ default: (await import("./types-page.tsx")).TypesPage }));
const TypePage = lazy(async () => ({ default: (await import("./type-page.tsx")).TypePage }));
const IntervalsPage = lazy(async () => ({
  default: (await import("./intervals-page.tsx")).IntervalsPage,
}));
const IntervalPage = lazy(async () => ({
  default: (await import("./interval-page.tsx")).IntervalPage,
}));
const PlanPage = lazy(async () => ({ default: (await import("./plan-page.tsx")).PlanPage }));
const DueListPage = lazy(async () => ({
  default: (await import("./due-list-page.tsx")).DueListPage,
}));
const AssetPage = lazy(async () => ({ default: (await import("./asset-page.tsx")).AssetPage }));
const EstatePage = lazy(async () => ({ default: (await import("./estate-page.tsx")).EstatePage }));
const ImportPage = lazy(async () => ({ default: (await import("./import-page.tsx")).ImportPage }));

const Opening = () => (
  <Page designer>
    <Loading label={d("app.opening")} />
  </Page>
);

export const App = () => {
  const session = useQuery({
    queryKey: ["session"],
    queryFn: () => getJson<SessionReply>("/api/session"),
    staleTime: 60_000,
  });
  if (session.isPending) return <Opening />;
  if (session.isError) {
    return (
      <Page designer>
        <Empty
          sentence={d("app.away")}
          actions={<WordButton onClick={() => void session.refetch()}>{d("app.again")}</WordButton>}
        />
      </Page>
    );
  }
  const { person, estate } = session.data;
  if (!person || !estate) {
    // The rounds hold the one sign-in page; they come back here.
    location.replace(`/?next=${encodeURIComponent(location.pathname)}`);
    return <Opening />;
  }
  if (person.role !== "owner" && person.role !== "manager") {
    return (
      <Page designer>
        <Empty
          sentence={d("app.not-yours")}
          actions={<WordLink href="/">{d("app.rounds")}</WordLink>}
        >
          <p>{d("app.not-yours-next", { role: d(`role.${person.role}`) })}</p>
        </Empty>
      </Page>
    );
  }
  return (
    <SessionProvider value={{ person, estate }}>
      <Router base="/designer">
        <Suspense fallback={<Opening />}>
          <Switch>
            <Route path="/draft/:id" component={EditorPage} />
            <Route path="/draft/:id/issue" component={IssuePage} />
            <Route path="/checklist/:hash" component={IssuedPage} />
            <Route path="/asset-types" component={TypesPage} />
            <Route path="/asset-types/:name" component={TypePage} />
            <Route path="/intervals" component={IntervalsPage} />
            <Route path="/intervals/:id" component={IntervalPage} />
            <Route path="/plan" component={PlanPage} />
            <Route path="/due" component={DueListPage} />
            <Route path="/assets/:id" component={AssetPage} />
            <Route path="/estate" component={EstatePage} />
            <Route path="/estate/import" component={ImportPage} />
            <Route component={ChecklistsPage} />
          </Switch>
        </Suspense>
      </Router>
    </SessionProvider>
  );
};
