import { useQuery } from "@tanstack/react-query";
import type { BundleRow } from "../offline/database.ts";
import { withWaiting } from "../offline/overlay.ts";
import { useDevice } from "./device.tsx";

/** Invalidated after every refresh and every entry: pages read what the device keeps. */
export const BUNDLES_KEY = ["bundles"] as const;

/** Every site this device keeps, with what was registered here and still waits. */
export const useBundles = () => {
  const { database } = useDevice();
  return useQuery<BundleRow[]>({
    queryKey: BUNDLES_KEY,
    networkMode: "always",
    queryFn: async () => {
      const outbox = await database.getAll("outbox");
      const rows = await database.getAll("bundles");
      return Promise.all(
        rows.map(async (row) => ({ ...row, bundle: await withWaiting(row.bundle, outbox) })),
      );
    },
  });
};

/** One kept site; null when the device does not keep it. */
export const useBundle = (site: string | null) => {
  const { database } = useDevice();
  return useQuery<BundleRow | null>({
    queryKey: [...BUNDLES_KEY, site],
    networkMode: "always",
    queryFn: async () => {
      const row = site === null ? undefined : await database.get("bundles", site);
      if (!row) return null;
      return { ...row, bundle: await withWaiting(row.bundle, await database.getAll("outbox")) };
    },
  });
};

/** The other sites this device keeps: a site of thousands is not read twice for one page. */
export const useOtherBundles = (site: string) => {
  const { database } = useDevice();
  return useQuery<BundleRow[]>({
    queryKey: [...BUNDLES_KEY, "beside", site],
    networkMode: "always",
    queryFn: async () => {
      const others = (await database.getAllKeys("bundles")).filter((one) => one !== site);
      if (others.length === 0) return [];
      const outbox = await database.getAll("outbox");
      const rows = await Promise.all(others.map((one) => database.get("bundles", one)));
      return Promise.all(
        rows.flatMap((row) =>
          row ? [withWaiting(row.bundle, outbox).then((bundle) => ({ ...row, bundle }))] : [],
        ),
      );
    },
  });
};
