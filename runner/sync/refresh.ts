import type { SessionReply, SiteBundle, SiteChanges } from "@roundbook/schemas";
import type { DeviceDatabase } from "../offline/database.ts";
import { deviceKey, markEnrolled, publicKey } from "../offline/device-key.ts";
import { changeSettings } from "../offline/settings.ts";
import { getJson, send, sendJson } from "./client.ts";
import { mergeChanges } from "./merge-changes.ts";

/** Asks who is signed in, and measures how far this device's clock is from the server's. */
export const refreshSession = async (
  database: DeviceDatabase,
  now: () => number,
): Promise<SessionReply> => {
  const before = now();
  const reply = await getJson<SessionReply>("/api/session");
  const clockOffset = Math.round(Date.parse(reply.now) - (before + now()) / 2);
  await changeSettings(database, {
    clockOffset,
    ...(reply.person ? { session: { reply, seenAt: now() } } : {}),
  });
  return reply;
};

/** Enrols this device for a person once; later calls do nothing. */
export const enrol = async (
  database: DeviceDatabase,
  person: string,
  label: string,
): Promise<void> => {
  const key = await deviceKey(database, person);
  if (key.enrolled) return;
  await sendJson("POST", "/api/devices", {
    device: key.device,
    key: await publicKey(key),
    label,
  });
  await markEnrolled(database, key);
};

/** Keeps a site as it was read, with the issues of its checklists. */
const keepSite = async (
  database: DeviceDatabase,
  bundle: SiteBundle,
  fetchedAt: number,
): Promise<void> => {
  const transaction = database.transaction(["bundles", "checklists"], "readwrite");
  await Promise.all([
    transaction.objectStore("bundles").put({ site: bundle.site.id, bundle, fetchedAt }),
    // Older issues stay: an inspection under way keeps the issue it was begun with.
    ...bundle.checklists.map((row) => transaction.objectStore("checklists").put(row)),
    transaction.done,
  ]);
};

/** What changed since the site was read; null where the whole has to be read again. */
const readChanges = async (kept: SiteBundle): Promise<SiteChanges | null> => {
  // Kept by an app that did not ask for changes.
  if (kept.stamp === undefined) return null;
  const { cursor, stamp, today } = kept;
  const asked = new URLSearchParams({ cursor: String(cursor), stamp, today });
  const reply = await getJson<{ changes: SiteChanges | null }>(
    `/api/sites/${kept.site.id}/changes?${asked}`,
  );
  return reply.changes;
};

/** Brings one site's register, due windows, checklists and last results to this device. */
export const refreshSite = async (
  database: DeviceDatabase,
  site: string,
  now: () => number,
): Promise<void> => {
  const kept = (await database.get("bundles", site))?.bundle;
  const changes = kept && (await readChanges(kept));
  if (kept && changes) {
    await keepSite(database, mergeChanges(kept, changes), now());
    return;
  }
  const response = await send(`/api/sites/${site}/bundle`);
  if (response.status === 304) return;
  await keepSite(database, await response.json(), now());
};
