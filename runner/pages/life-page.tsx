import type { AssetRow, DefectRow, DueRow } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useLocation, useParams } from "wouter";
import { Empty, Loading, TitleBlock, WordLink } from "../form/index.ts";
import { book } from "../messages/book.ts";
import type { BundleRow } from "../offline/database.ts";
import { getJson } from "../sync/client.ts";
import { LifeOf } from "./life-of.tsx";
import { RunnerPage } from "./runner-page.tsx";
import { useBundles } from "./use-bundle.ts";

interface Kept {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly defects: readonly DefectRow[];
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
      bundle,
    };
  }
  return null;
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
  const [, navigate] = useLocation();
  const bundles = useBundles();
  const kept = bundles.data ? findKept(bundles.data, called) : null;
  const away = useAway(called, bundles.data !== undefined && kept === null);
  const asset = kept?.asset ?? away.data?.asset;
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
  return (
    <LifeOf
      {...{ asset }}
      due={kept?.due ?? away.data?.due ?? []}
      defects={kept?.defects ?? away.data?.defects ?? []}
      bundle={kept?.bundle}
    />
  );
};
