import { at, type ChangeParticulars, parseParticulars } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { patterns } from "./engines.ts";
import { readAsset } from "./read-assets.ts";
import { readAssetTypes } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

/** Says all particulars of an asset as they are from now on; a modification asks for its checks. */
export async function changeParticulars(
  ctx: Context,
  by: Session,
  asset: string,
  given: ChangeParticulars,
): Promise<void> {
  const found = await readAsset(ctx, asset);
  if (found === null) throw new Refusal("not-found", "no-such-asset");
  const types = await readAssetTypes(ctx);
  const type = types.find(({ assetType }) => assetType === found.asset.assetType);
  const problems = parseParticulars(type?.particulars ?? {}, given.particulars, patterns).map(
    (one) => ({ ...one, pointer: at("", "particulars") + one.pointer }),
  );
  if (problems.length > 0) throw new Refusal("invalid", "asset-not-right", problems);
  await appendNow(ctx, by, { kind: "particulars-changed", asset: found.asset.id, body: given });
}
