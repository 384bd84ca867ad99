import { useQuery } from "@tanstack/react-query";
import { listDrafts } from "../offline/drafts.ts";
import { listOutbox, listSent } from "../offline/outbox.ts";
import { useDevice } from "./device.tsx";
import { BUNDLES_KEY } from "./use-bundle.ts";

const startOfDay = (now: number): number => new Date(now).setHours(0, 0, 0, 0);

/** What was begun, finished and sent on this device; read again with everything it keeps. */
export const useOwnWork = () => {
  const { database, now } = useDevice();
  return useQuery({
    queryKey: [...BUNDLES_KEY, "own-work"],
    queryFn: async () => {
      const [outbox, sent, drafts] = await Promise.all([
        listOutbox(database),
        listSent(database, startOfDay(now())),
        listDrafts(database),
      ]);
      return { outbox, sent, drafts };
    },
  });
};
