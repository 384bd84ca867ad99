import { useQueryClient } from "@tanstack/react-query";
import { lazy, Suspense, useCallback, useEffect, useMemo, useState } from "react";
import { Route, Switch } from "wouter";
import { Empty, Loading, Page } from "../form/index.ts";
import { w } from "../messages/page.ts";
import type { DeviceDatabase } from "../offline/database.ts";
import { changeSettings, loadSettings, type Settings } from "../offline/settings.ts";
import { useConnection } from "../sync/use-connection.ts";
import { type Device, DeviceProvider, type SignedIn } from "./device.tsx";
import { RoundPage } from "./round-page.tsx";
import { type Gate, useGate } from "./use-gate.ts";

const BeginPage = lazy(async () => ({ default: (await import("./begin-page.tsx")).BeginPage }));
const SignInPage = lazy(async () => ({ default: (await import("./sign-in-page.tsx")).SignInPage }));
const SitesPage = lazy(async () => ({ default: (await import("./sites-page.tsx")).SitesPage }));
const FillPage = lazy(async () => ({ default: (await import("./fill-page.tsx")).FillPage }));
const WrittenPage = lazy(async () => ({
  default: (await import("./written-page.tsx")).WrittenPage,
}));
const DevicePage = lazy(async () => ({ default: (await import("./device-page.tsx")).DevicePage }));
const RegisterPage = lazy(async () => ({
  default: (await import("./register-page.tsx")).RegisterPage,
}));
const AddAssetPage = lazy(async () => ({
  default: (await import("./register-add-page.tsx")).AddAssetPage,
}));
const LifePage = lazy(async () => ({ default: (await import("./life-page.tsx")).LifePage }));
const EntryPage = lazy(async () => ({
  default: (await import("./life-entry-page.tsx")).EntryPage,
}));
const DefectsPage = lazy(async () => ({
  default: (await import("./defects-page.tsx")).DefectsPage,
}));
const SheetPage = lazy(async () => ({ default: (await import("./sheet-page.tsx")).SheetPage }));
const LogbookPage = lazy(async () => ({
  default: (await import("./logbook-page.tsx")).LogbookPage,
}));

const Opening = () => (
  <Page>
    <Loading label={w("app.opening")} />
  </Page>
);

interface AppProps {
  readonly opening: Promise<DeviceDatabase>;
  now(): number;
}

export const App = ({ opening, now }: AppProps) => {
  const [database, setDatabase] = useState<DeviceDatabase | "none">();
  useEffect(() => {
    opening.then(setDatabase, () => setDatabase("none"));
  }, [opening]);
  if (database === undefined) return <Opening />;
  if (database === "none") {
    return (
      <Page>
        <Empty sentence={w("app.no-store")} />
      </Page>
    );
  }
  return <Kept database={database} now={now} />;
};

const Kept = ({
  database,
  now,
}: {
  readonly database: DeviceDatabase;
  readonly now: AppProps["now"];
}) => {
  const gate: Gate = useGate(database, now);
  switch (gate.state) {
    case "opening":
      return <Opening />;
    case "begin":
      return (
        <Suspense fallback={<Opening />}>
          <BeginPage onBegun={gate.again} />
        </Suspense>
      );
    case "sign-in":
      return (
        <Suspense fallback={<Opening />}>
          <SignInPage {...{ database, estate: gate.estate }} onSignedIn={gate.again} />
        </Suspense>
      );
    case "in":
      return (
        <SignedInApp
          key={gate.signedIn.person.id}
          {...{ database, now }}
          signedIn={gate.signedIn}
        />
      );
  }
};

const useSettings = (database: DeviceDatabase) => {
  const [settings, setSettings] = useState<Settings>();
  const read = useCallback(async () => setSettings(await loadSettings(database)), [database]);
  useEffect(() => void read(), [read]);
  const change = useCallback(
    async (changes: Partial<Settings>) => setSettings(await changeSettings(database, changes)),
    [database],
  );
  useEffect(() => {
    const { dataset } = document.documentElement;
    if (!settings || settings.ink === "system") delete dataset.ink;
    else dataset.ink = settings.ink;
  }, [settings]);
  return { settings, read, change };
};

const SignedInApp = ({
  database,
  now,
  signedIn,
}: {
  readonly database: DeviceDatabase;
  readonly now: AppProps["now"];
  readonly signedIn: SignedIn;
}) => {
  const { settings, read, change } = useSettings(database);
  if (!settings) return <Opening />;
  return <Connected {...{ database, now, signedIn, settings, read, change }} />;
};

const Connected = ({
  database,
  now,
  signedIn,
  settings,
  read,
  change,
}: {
  readonly database: DeviceDatabase;
  readonly now: AppProps["now"];
  readonly signedIn: SignedIn;
  readonly settings: Settings;
  read(): Promise<void>;
  change(changes: Partial<Settings>): Promise<void>;
}) => {
  const queries = useQueryClient();
  const onRefreshed = useCallback(() => {
    void read();
    void queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== "pages" });
  }, [read, queries]);
  const connection = useConnection({
    database,
    person: signedIn.person.id,
    label: w("device.title"),
    site: settings.site,
    now,
    onRefreshed,
  });
  const device = useMemo<Device>(
    () => ({ ...signedIn, database, now, settings, changeSettings: change, connection }),
    [signedIn, database, now, settings, change, connection],
  );
  return (
    <DeviceProvider device={device}>
      <Suspense fallback={<Opening />}>
        <Switch>
          <Route path="/sites" component={SitesPage} />
          <Route path="/fill/:asset/:checklistHash" component={FillPage} />
          <Route path="/sheet/:hash" component={SheetPage} />
          <Route path="/written/:entry" component={WrittenPage} />
          <Route path="/device" component={DevicePage} />
          <Route path="/register/add" component={AddAssetPage} />
          <Route path="/register" component={RegisterPage} />
          <Route path="/asset/:asset/entry/:entry" component={EntryPage} />
          <Route path="/asset/:id" component={LifePage} />
          <Route path="/defects" component={DefectsPage} />
          <Route path="/logbook" component={LogbookPage} />
          <Route component={RoundPage} />
        </Switch>
      </Suspense>
    </DeviceProvider>
  );
};
