import { addPlace } from "../add-place.ts";
import type { Context, Session } from "../context.ts";
import { issueChecklist } from "../issue-checklist.ts";
import { putAssetType } from "../put-asset-type.ts";
import { registerAsset } from "../register-asset.ts";
import { setInterval } from "../set-interval.ts";
import { ASSETS, type DemoAsset } from "./assets.ts";
import { KIND_NAMES, KINDS, type KindName, particularsOf } from "./kinds.ts";
import { SITES, ZONE } from "./places.ts";

export interface RegisteredAsset extends DemoAsset {
  readonly id: string;
}
export interface DemoChecklist {
  readonly id: string;
  readonly issue: number;
  readonly hash: string;
}
export interface DemoRegister {
  readonly assets: readonly RegisteredAsset[];
  readonly checklists: ReadonlyMap<KindName, DemoChecklist>;
}

async function addSites(ctx: Context, desk: Session): Promise<ReadonlyMap<string, string>> {
  const rooms = new Map<string, string>();
  for (const { code, name, rooms: inside } of SITES) {
    const site = await addPlace(ctx, desk, { parent: null, level: "site", code, name, zone: ZONE });
    for (const [room, title] of inside) {
      const given = { parent: site.id, level: "room", code: room, name: title } as const;
      rooms.set(room, (await addPlace(ctx, desk, given)).id);
    }
  }
  return rooms;
}

async function addKind(ctx: Context, desk: Session, name: KindName): Promise<DemoChecklist> {
  const { title, document, interval } = KINDS[name];
  const checklist = ctx.newId();
  const issued = await issueChecklist(ctx, desk, { checklist, document, reason: "First issue" });
  const particulars = particularsOf(name);
  await putAssetType(ctx, desk, name, {
    assetType: name,
    title,
    particulars,
    checklists: [checklist],
  });
  const { title: intervalTitle, basis, ...rule } = interval;
  await setInterval(ctx, desk, {
    title: intervalTitle,
    assetType: name,
    checklist,
    rule: { kind: "from-last-done", ...rule },
    basis,
  });
  return issued;
}

/** Places, checklists, types, intervals and assets, each by the verb the desk uses. */
export async function writeRegister(ctx: Context, desk: Session): Promise<DemoRegister> {
  const rooms = await addSites(ctx, desk);
  const checklists = new Map<KindName, DemoChecklist>();
  for (const name of KIND_NAMES) checklists.set(name, await addKind(ctx, desk, name));
  const assets = await Promise.all(
    ASSETS.map(async (asset) => {
      const { number, kind, description, particulars, room } = asset;
      const { id } = await registerAsset(ctx, desk, {
        number,
        assetType: kind,
        description,
        place: rooms.get(room) ?? "",
        particulars: { ...particulars },
        order: Number(number),
      });
      return { ...asset, id };
    }),
  );
  return { assets, checklists };
}
