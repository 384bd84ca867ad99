import type { Content } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useCallback } from "react";
import { civilDateIn } from "../offline/civil-today.ts";
import type { Draft, EntrySummary } from "../offline/database.ts";
import { deviceKey } from "../offline/device-key.ts";
import { type Made, makeEntry } from "../offline/make-entry.ts";
import { finish } from "../offline/outbox.ts";
import { withRoom } from "../offline/room.ts";
import { useDevice } from "./device.tsx";
import { BUNDLES_KEY } from "./use-bundle.ts";

export interface Writing {
  readonly made: Made;
  readonly asset: string;
  readonly contents: readonly Content[];
  /** IANA zone of the asset's site: it decides the civil date. */
  readonly zone: string;
  readonly summary: EntrySummary;
  readonly draft?: Draft;
  /** Of what was done on paper: ISO date, whose time of day nobody wrote down. */
  readonly doneOn?: string;
}

/** Signs an entry, puts it into the outbox and lets sending begin; resolves to its id. */
export const useWrite = (): ((writing: Writing) => Promise<string>) => {
  const { database, now, settings, person, connection } = useDevice();
  const { clockOffset } = settings;
  const { refresh } = connection;
  const queries = useQueryClient();
  return useCallback(
    async ({ made, asset, contents, zone, summary, draft, doneOn }) => {
      const at = now();
      const signed = await makeEntry(await deviceKey(database, person.id), made, {
        asset,
        contents,
        now: doneOn === undefined ? at : null,
        civilDate: doneOn ?? civilDateIn(zone, at + clockOffset),
      });
      const row = {
        id: signed.entry.id,
        signed,
        person: person.id,
        state: "waiting",
        problems: [],
        madeAt: at,
        summary,
        draft: draft ?? null,
      } as const;
      await withRoom(database, now, () => finish(database, row));
      await queries.invalidateQueries({ queryKey: BUNDLES_KEY });
      void refresh();
      return signed.entry.id;
    },
    [database, now, person.id, clockOffset, refresh, queries],
  );
};
