import type { LeaseNumbers, NumberBlock } from "@roundbook/schemas";
import type { DeviceDatabase } from "../offline/database.ts";
import { deviceKey } from "../offline/device-key.ts";
import { keepBlock, leftIn, loadNumbers, scopeOf, seriesOf } from "../offline/number-blocks.ts";
import { Refusal, sendJson, Unreachable } from "./client.ts";

/** With fewer left than this another block is asked for: a day without a signal may begin. */
const FEW = 25;

const renew = async (database: DeviceDatabase, person: string): Promise<void> => {
  const { device, enrolled } = await deviceKey(database, person);
  if (!enrolled) return;
  for (const { site, bundle } of await database.getAll("bundles")) {
    const asked = bundle.assetTypes.map((type) => seriesOf(bundle.assets, type.assetType));
    for (const { prefix, value } of asked) {
      const scope = scopeOf(site, prefix);
      const blocks = (await loadNumbers(database, device))[scope] ?? [];
      if (leftIn(blocks) >= FEW) continue;
      const after = blocks.at(-1)?.id ?? null;
      const wanted: LeaseNumbers = { device, site, prefix, near: value + 1, after };
      const block = await sendJson<NumberBlock>("POST", "/api/number-blocks", wanted);
      await keepBlock(database, device, scope, block);
    }
  }
};

/**
 * Has the server keep asset numbers for this device, for every site it keeps; one tab at a time.
 * Where the server is away or says no it is asked again with the next refresh.
 */
export const renewNumbers = (database: DeviceDatabase, person: string): Promise<void> =>
  navigator.locks.request("roundbook-numbers", async () => {
    try {
      await renew(database, person);
    } catch (error) {
      if (!(error instanceof Unreachable) && !(error instanceof Refusal)) throw error;
    }
  });
