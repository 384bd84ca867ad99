import {
  ADD_PLACE_SCHEMA,
  type AddPlace,
  ASSET_TYPE_SCHEMA,
  type AssetTypeBody,
  INTERVAL_SCHEMA,
  type IntervalDefinition,
  type Problem,
  UUID,
} from "@roundbook/schemas";
import { addPlace } from "../usecases/add-place.ts";
import { atOnce } from "../usecases/at-once.ts";
import type { Context, Session } from "../usecases/context.ts";
import { findProblems } from "../usecases/find-problems.ts";
import { issueChecklist } from "../usecases/issue-checklist.ts";
import { knownBlocks } from "../usecases/known-blocks.ts";
import { putAssetType } from "../usecases/put-asset-type.ts";
import { setInterval } from "../usecases/set-interval.ts";
import { sayProblem } from "../words/say.ts";
import { readArguments } from "./arguments.ts";
import { DONE, UsageError, type Verb } from "./io.ts";
import { enter } from "./open-estate.ts";
import { jsonReader, readJson } from "./read-json.ts";

/** What a definition is known by, and what its designer had better look at. */
type Known = object & { readonly warnings?: readonly Problem[] };

type Put = (ctx: Context, by: Session, file: string, id: string | undefined) => Promise<Known>;

/** A verb that puts the definition in FILE in force, and prints what it is known by. */
const defining = (usage: string, put: Put): Verb => ({
  usage,
  async run(args, io) {
    const { values, positionals } = readArguments(args, ["FILE"], { id: { type: "string" } });
    const { id, json } = values;
    if (id !== undefined && !new RegExp(UUID).test(id))
      throw new UsageError(`--id ${id} is no UUID of version 7 or 8 in lower case`);
    const [file = ""] = positionals;
    const known = await enter(io, (ctx, by) => atOnce(ctx, (within) => put(within, by, file, id)));
    const { warnings = [], ...names } = known;
    const told = warnings.map((one) => ({ ...one, says: sayProblem(one) }));
    for (const { says } of told) io.err(`warning: ${says}`);
    const plain = Object.entries(names).map(([name, value]) => `${name} ${value}`);
    const whole = known.warnings ? { ...names, warnings: told } : names;
    await io.out(json ? JSON.stringify(whole) : plain.join(", "));
    return DONE;
  },
});

export const issue = defining(
  "issue FILE [--id CHECKLIST] [--json]   (a new checklist without --id)",
  async (ctx, by, file, id) => {
    const document = await readJson(file);
    const issued = await issueChecklist(ctx, by, { checklist: id ?? ctx.newId(), document });
    // What stands in the way was refused: what is left to tell are warnings.
    const { problems } = findProblems(document, await knownBlocks(ctx, document));
    return { ...issued, warnings: problems };
  },
);

const readAssetType = jsonReader<AssetTypeBody>(ASSET_TYPE_SCHEMA);
export const assetType = defining("asset-type FILE [--json]", async (ctx, by, file) => {
  const body = await readAssetType(file);
  const { version } = await putAssetType(ctx, by, body.assetType, body);
  return { assetType: body.assetType, version };
});

const readInterval = jsonReader<IntervalDefinition>(INTERVAL_SCHEMA);
export const interval = defining(
  "interval FILE [--id INTERVAL] [--json]   (a new interval without --id)",
  async (ctx, by, file, id) => setInterval(ctx, by, await readInterval(file), id),
);

const readPlace = jsonReader<AddPlace>(ADD_PLACE_SCHEMA);
export const place = defining(
  "place FILE [--json]   (a site is a place without a parent)",
  async (ctx, by, file) => addPlace(ctx, by, await readPlace(file)),
);
