import type { PlaceRow } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useLocation } from "wouter";
import { Empty, LeafWords, Row, Rows, TitleBlock } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { getJson } from "../sync/client.ts";
import { refreshSite } from "../sync/refresh.ts";
import { useDevice } from "./device.tsx";
import { ConnectionLine, RunnerPage } from "./runner-page.tsx";
import { useBundles } from "./use-bundle.ts";

/** Chooses the site to walk; the chosen one is brought to this device and stays. */
export const SitesPage = () => {
  const { database, now, changeSettings, connection } = useDevice();
  const [, navigate] = useLocation();
  const kept = useBundles().data?.map((row) => row.bundle.site) ?? [];
  const known = useQuery({
    queryKey: ["places"],
    queryFn: () => getJson<{ rows: PlaceRow[] }>("/api/places"),
  });
  const sites = new Map(kept.map((site) => [site.id, site]));
  for (const place of known.data?.rows ?? []) {
    if (place.level === "site") sites.set(place.id, place);
  }
  const choose = async (site: string) => {
    await changeSettings({ site });
    if (!kept.some((one) => one.id === site)) await refreshSite(database, site, now);
    void connection.refresh();
    navigate("/");
  };
  return (
    <RunnerPage current="round">
      <TitleBlock title={w("sites.title")} second={w("sites.about")} />
      <ConnectionLine />
      {known.isError && <LeafWords>{w("sites.offline")}</LeafWords>}
      <Rows>
        {[...sites.values()].map((site) => (
          <Row
            key={site.id}
            number={site.code}
            name={site.name}
            second={kept.some((one) => one.id === site.id) ? w("sites.kept") : undefined}
            onPress={() => void choose(site.id)}
          />
        ))}
      </Rows>
      {known.data && sites.size === 0 && (
        <Empty sentence={w("sites.none")}>
          <p>{w("sites.none-next")}</p>
        </Empty>
      )}
    </RunnerPage>
  );
};
