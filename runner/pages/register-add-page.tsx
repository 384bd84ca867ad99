import type { AssetRow, SiteBundle } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import type { ReactNode } from "react";
import { useLocation, useSearch } from "wouter";
import { Empty, Loading, Page, TitleBlock, WordLink } from "../form/index.ts";
import { add } from "../messages/add.ts";
import { loadCarried } from "../offline/carried.ts";
import { useDevice } from "./device.tsx";
import { AddForm } from "./register-add-form.tsx";
import type { AddFields } from "./register-particulars.tsx";
import { useBundles } from "./use-bundle.ts";
import { useNumbers } from "./use-numbers.ts";

/** Particulars as they would have been typed. */
const typedOf = (asset: AssetRow): Record<string, string> =>
  Object.fromEntries(
    Object.entries(asset.particulars).map(([name, value]) => [name, String(value)]),
  );

const EMPTY: AddFields = {
  number: "",
  place: "",
  assetType: "",
  description: "",
  serial: "",
  particulars: {},
};

const AddNothing = ({ sentence, children }: { sentence: string; children: ReactNode }) => {
  const [, navigate] = useLocation();
  return (
    <Page>
      <TitleBlock
        title={add("add.title")}
        actions={
          <WordLink href="/register" onFollow={navigate}>
            {add("add.leave")}
          </WordLink>
        }
        size="fill"
      />
      <Empty sentence={sentence}>{children}</Empty>
    </Page>
  );
};

/** What the page begins with: an asset to copy, what was scanned, else what the last one left. */
const useBeginning = (bundles: readonly SiteBundle[], bundle: SiteBundle | undefined) => {
  const { database } = useDevice();
  const asked = new URLSearchParams(useSearch());
  const site = bundle?.site.id;
  const carried = useQuery({
    queryKey: ["carried", site],
    enabled: site !== undefined,
    networkMode: "always",
    gcTime: 0,
    queryFn: () => loadCarried(database, site ?? ""),
  });
  if (!bundle || carried.data === undefined) return null;
  const copied = bundles.flatMap(({ assets }) => assets).find(({ id }) => id === asked.get("copy"));
  const here = new Set([bundle.site.id, ...bundle.places.map(({ id }) => id)]);
  const place = [asked.get("place"), copied?.place, carried.data?.place].find(
    (one) => one != null && here.has(one),
  );
  const number = asked.get("number")?.trim().slice(0, 64) ?? "";
  const { assetType = "", description = "" } = copied ?? carried.data ?? {};
  const particulars = copied ? typedOf(copied) : {};
  const fields = { ...EMPTY, number, place: place ?? "", assetType, description, particulars };
  return { fields, copied };
};

/** Registers assets one after another: place, type and description are carried forward, the number counts on. */
export const AddAssetPage = () => {
  const { settings } = useDevice();
  const [, navigate] = useLocation();
  const rows = useBundles().data;
  const bundles = (rows ?? []).map((row) => row.bundle);
  const bundle = bundles.find(({ site }) => site.id === settings.site);
  const beginning = useBeginning(bundles, bundle);
  const { kept, claim } = useNumbers();
  if (rows !== undefined && !bundle)
    return (
      <AddNothing sentence={add("add.no-site")}>
        <p>
          <WordLink href="/sites" onFollow={navigate}>
            {add("add.to-sites")}
          </WordLink>
        </p>
      </AddNothing>
    );
  if (bundle?.assetTypes.length === 0)
    return (
      <AddNothing sentence={add("add.no-types")}>
        <p>{add("add.no-types-next")}</p>
      </AddNothing>
    );
  if (!bundle || !beginning || !kept)
    return (
      <Page>
        <Loading label={add("add.title")} />
      </Page>
    );
  return <AddForm {...{ bundle, bundles, kept, claim }} {...beginning} />;
};
