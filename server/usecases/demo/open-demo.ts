import type { Setup } from "@roundbook/schemas";
import { addPerson } from "../add-person.ts";
import { appendNow } from "../append-now.ts";
import type { Context, Session } from "../context.ts";
import { createEstate, readEstate } from "../create-estate.ts";
import { setTime } from "../set-keeper.ts";
import { enrolDemoDevice } from "./device.ts";
import { INSPECTORS, PEOPLE } from "./people.ts";
import { ESTATE } from "./places.ts";
import { createRandom } from "./random.ts";
import { daysBefore, later } from "./time.ts";
import { walkRounds } from "./walk-rounds.ts";
import { writeRegister } from "./write-register.ts";

/** A year and a half and a few days. */
const DAYS_BACK = 560;
const SEED = 8420;
const KEEPING = ["dag", "isel"] as const;
const MINUTES_A_WEEK = 60;

/**
 * Opens the invented estate through the same verbs as everybody's, as if it had been kept for a
 * year and a half: the clock the verbs see is set back and walks up to now. Gives the owner's id.
 */
export async function openDemo(ctx: Context, setup: Setup): Promise<string> {
  const then = later(ctx, daysBefore(ctx.clock(), DAYS_BACK));
  if (!(await readEstate(ctx))) await createEstate(then, { name: ESTATE });
  const { name, signIn, password } = setup;
  const { id } = await addPerson(then, null, { name, role: "owner", signIn, password });
  const owner: Session = { person: id, role: "owner" };
  await appendNow(then, owner, { kind: "estate-named", asset: null, body: { name: ESTATE } });

  const manager = await addPerson(then, owner, { ...PEOPLE.morwen, password });
  const desk: Session = { person: manager.id, role: "manager" };
  const devices = await Promise.all(
    INSPECTORS.map(async (who) => {
      const person = await addPerson(then, desk, { ...PEOPLE[who], password });
      const session: Session = { person: person.id, role: "inspector" };
      const label = `${PEOPLE[who].name.split(" ")[0]}’s phone`;
      return [who, await enrolDemoDevice(then, session, label)] as const;
    }),
  );
  const people = new Map(devices.map(([who, { session }]) => [who, session.person]));
  for (const who of KEEPING) await setTime(then, desk, people.get(who) ?? "", MINUTES_A_WEEK);
  const register = await writeRegister(then, desk, people);
  await walkRounds(ctx, register, new Map(devices), createRandom(SEED));
  return id;
}
