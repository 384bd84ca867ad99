import {
  type CivilDate,
  type Entry,
  formatCivilDate,
  type Judgement,
  parseCivilDate,
} from "@roundbook/schemas";
import { civilNow } from "../civil-now.ts";
import type { Context } from "../context.ts";
import { instantOf } from "../instant-of.ts";
import { judgeFor } from "../judge-for.ts";
import { answersOf } from "./answers.ts";
import type { DemoDevice } from "./device.ts";
import { otherPastOf, type PastInspection, pastOf } from "./past.ts";
import { INSPECTORS, type Inspector, inspectorOf } from "./people.ts";
import { ZONE } from "./places.ts";
import type { Random } from "./random.ts";
import { type PastEntry, sealPast } from "./seal-past.ts";
import { createSteps } from "./steps.ts";
import { daysBefore, later } from "./time.ts";
import type { DemoRegister, RegisteredAsset } from "./write-register.ts";

const MINUTE = 60_000;
/** Two people's rounds of one day do not overlap: the log stays in the order of the clock. */
const HOURS_APART = 4 * 60 * MINUTE;

interface Visit extends PastInspection {
  readonly asset: RegisteredAsset;
}

type Devices = ReadonlyMap<Inspector, DemoDevice>;

const siteOf = (asset: RegisteredAsset): string => asset.room.slice(0, 1);

/** The visits of each day and person, in walking order; days in order. */
function roundsOf(visits: readonly Visit[]): [string, Visit[]][] {
  const rounds = new Map<string, Visit[]>();
  for (const visit of visits) {
    const key = `${formatCivilDate(visit.on)} ${inspectorOf(visit.check, siteOf(visit.asset))}`;
    rounds.set(key, [...(rounds.get(key) ?? []), visit]);
  }
  return [...rounds].sort(([a], [b]) => (a < b ? -1 : 1));
}

async function inspect(
  ctx: Context,
  { asset, check, on, age, days }: Visit & { readonly days: number },
  device: DemoDevice,
  register: DemoRegister,
  random: Random,
): Promise<{ entry: Entry; judgement: Judgement }> {
  const checklist = register.checklists.get(check);
  if (!checklist) throw new Error(`no checklist for ${check}`);
  const judge = await judgeFor(ctx, ctx.store.db, checklist.hash);
  const answers = answersOf(check, asset, { age, days }, random);
  const { particulars } = asset;
  const judgement = judge.judge({ particulars, answers });
  if (!judgement.complete)
    throw new Error(`${asset.number}: ${JSON.stringify(judgement.problems)}`);
  const entry: Entry = {
    id: ctx.newId(),
    kind: "inspection",
    asset: asset.id,
    author: device.session.person,
    device: device.id,
    happenedAt: instantOf(ctx.clock()),
    civilDate: formatCivilDate(on),
    body: {
      checklist: { ...checklist },
      particulars: { ...particulars },
      answers: { ...answers },
      judgement: JSON.parse(JSON.stringify(judgement)),
    },
  };
  return { entry, judgement };
}

/** Every round since the register was written, in order, made and signed on the people's devices. */
export async function walkRounds(
  ctx: Context,
  register: DemoRegister,
  devices: Devices,
  random: Random,
): Promise<void> {
  const today = parseCivilDate(civilNow(ctx, ZONE)) ?? (0 as CivilDate);
  const begun = (today - 559) as CivilDate;
  const visits = register.assets.flatMap((asset) =>
    [...pastOf(asset, begun, today), ...otherPastOf(asset, begun, today)].map((past) => ({
      ...past,
      asset,
    })),
  );
  const stepsAfter = createSteps(ctx.newId);
  const past: PastEntry[] = [];
  for (const [key, round] of roundsOf(visits)) {
    const who = key.slice(11) as Inspector;
    const device = devices.get(who);
    if (!device) throw new Error(`no device for ${key}`);
    const starts = INSPECTORS.indexOf(who) * HOURS_APART;
    let instant = daysBefore(ctx.clock(), today - (round[0]?.on ?? today)) + starts;
    const made: { entry: Entry; judgement: Judgement | null }[] = [];
    for (const visit of round) {
      instant += random.whole(4, 11) * MINUTE;
      const inspected = await inspect(
        later(ctx, instant),
        { ...visit, days: today - visit.on },
        device,
        register,
        random,
      );
      const steps = stepsAfter(visit, inspected.entry);
      made.push(inspected, ...steps.map((entry) => ({ entry, judgement: null })));
    }
    const receivedAt = instant + 12 * MINUTE;
    const deliveredBy = device.session.person;
    for (const { entry, judgement } of made)
      past.push({ signed: device.sign(entry), judgement, deliveredBy, receivedAt });
  }
  await sealPast(ctx, past);
}
