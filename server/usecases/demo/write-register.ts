import type { IntervalRule } from "@roundbook/schemas";
import { addPlace } from "../add-place.ts";
import type { Context, Session } from "../context.ts";
import { issueChecklist } from "../issue-checklist.ts";
import { putAssetType } from "../put-asset-type.ts";
import { registerAsset } from "../register-asset.ts";
import { setCalendar } from "../set-calendar.ts";
import { setInterval } from "../set-interval.ts";
import { setKeeper } from "../set-keeper.ts";
import { ASSETS, type DemoAsset } from "./assets.ts";
import {
  type CheckName,
  checkOf,
  KIND_NAMES,
  KINDS,
  type KindName,
  particularsOf,
} from "./kinds.ts";
import { KEEPERS, REGION, SEASONS, SITES, type SiteCode, WEEKEND, ZONE } from "./places.ts";

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
  readonly checklists: ReadonlyMap<CheckName, DemoChecklist>;
}

/** Person ids of the keepers by sign-in name. */
export type People = ReadonlyMap<string, string>;

/** When a site is closed and who does its rounds. */
async function keepSite(ctx: Context, desk: Session, code: SiteCode, site: string, people: People) {
  const season = SEASONS[code];
  await setCalendar(ctx, desk, site, {
    region: REGION,
    weekdays: WEEKEND,
    ...(season === undefined ? {} : { seasons: [season] }),
  });
  await setKeeper(ctx, desk, site, people.get(KEEPERS[code]) ?? null);
}

async function addSites(
  ctx: Context,
  desk: Session,
  people: People,
): Promise<ReadonlyMap<string, string>> {
  const rooms = new Map<string, string>();
  for (const { code, name, rooms: inside } of SITES) {
    const site = await addPlace(ctx, desk, { parent: null, level: "site", code, name, zone: ZONE });
    await keepSite(ctx, desk, code, site.id, people);
    for (const [room, title] of inside) {
      const given = { parent: site.id, level: "room", code: room, name: title } as const;
      rooms.set(room, (await addPlace(ctx, desk, given)).id);
    }
  }
  return rooms;
}

async function issue(ctx: Context, desk: Session, name: CheckName): Promise<DemoChecklist> {
  const { document } = checkOf(name);
  return issueChecklist(ctx, desk, { checklist: ctx.newId(), document, reason: "First issue" });
}

/** What a meter shows is read off on the weekly look, not on the service that waits for it. */
const ruleOf = (name: CheckName, main: DemoChecklist): IntervalRule => {
  const { rule } = checkOf(name);
  return rule.kind === "on-usage" ? { ...rule, checklist: main.id } : rule;
};

/** A type with its checklists, and when each is due. */
async function addKind(
  ctx: Context,
  desk: Session,
  name: KindName,
): Promise<[CheckName, DemoChecklist][]> {
  const kind = KINDS[name];
  const names: readonly CheckName[] = [name, ...kind.others];
  const issued: [CheckName, DemoChecklist][] = [];
  for (const check of names) issued.push([check, await issue(ctx, desk, check)]);
  const [[, main] = []] = issued;
  if (main === undefined) throw new Error(`${name} has no checklist`);
  await putAssetType(ctx, desk, name, {
    assetType: name,
    title: kind.name,
    particulars: particularsOf(name),
    checklists: issued.map(([, { id }]) => id),
  });
  for (const [check, { id: checklist }] of issued) {
    const { title, basis } = checkOf(check);
    const rule = ruleOf(check, main);
    await setInterval(ctx, desk, { title, assetType: name, checklist, rule, basis });
  }
  return issued;
}

/** Places, checklists, types, intervals and assets, each by the verb the desk uses. */
export async function writeRegister(
  ctx: Context,
  desk: Session,
  people: People,
): Promise<DemoRegister> {
  const rooms = await addSites(ctx, desk, people);
  const checklists = new Map<CheckName, DemoChecklist>();
  for (const name of KIND_NAMES)
    for (const [check, issued] of await addKind(ctx, desk, name)) checklists.set(check, issued);
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
