import { at, type BodyOf, type Problem, parseParticulars, problem } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { patterns } from "./engines.ts";
import { findAssetsByNumber } from "./read-assets.ts";
import { readAssetTypes, readPlaces } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

type Registration = Omit<BodyOf<"registered">, "source">;

async function problemsOf(ctx: Context, given: Registration): Promise<Problem[]> {
  const [types, places, numbers] = await Promise.all([
    readAssetTypes(ctx),
    readPlaces(ctx),
    findAssetsByNumber(ctx, [given.number]),
  ]);
  const type = types.find(({ assetType }) => assetType === given.assetType);
  const problems: Problem[] = parseParticulars(
    type?.particulars ?? {},
    type ? given.particulars : {},
    patterns,
  ).map((found) => ({ ...found, pointer: at("", "particulars") + found.pointer }));
  if (!type)
    problems.push(
      problem("/assetType", "unknown-asset-type", {
        assetType: given.assetType,
        known: types.map((row) => row.assetType),
      }),
    );
  if (!places.some(({ id }) => id === given.place))
    problems.push(problem("/place", "unknown-place"));
  if ((numbers.get(given.number) ?? []).length > 0)
    problems.push(problem("/number", "number-taken", { number: given.number }));
  return problems;
}

/** Registers an asset at the desk, where a number that is taken can still be chosen anew. */
export async function registerAsset(
  ctx: Context,
  by: Session,
  given: Registration,
): Promise<{ id: string }> {
  const problems = await problemsOf(ctx, given);
  if (problems.length > 0) throw new Refusal("invalid", "asset-not-right", problems);
  const id = ctx.newId();
  await appendNow(ctx, by, { kind: "registered", asset: id, body: given });
  return { id };
}
