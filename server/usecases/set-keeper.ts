import { at, type Problem, problem, type TeamBody } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readPeople, readPlaces } from "./read-register.ts";
import { readTeams } from "./read-teams.ts";
import { Refusal } from "./refusal.ts";

/** Makes a team, or says anew who is in it. */
export async function setTeam(
  ctx: Context,
  by: Session,
  team: string,
  given: TeamBody,
): Promise<void> {
  const people = new Set((await readPeople(ctx)).map(({ id }) => id));
  const problems: Problem[] = given.members.flatMap((member, index) =>
    people.has(member) ? [] : [problem(at("/members", index), "unknown-person")],
  );
  if (problems.length > 0) throw new Refusal("invalid", "team-not-right", problems);
  await appendNow(ctx, by, { kind: "team-set", asset: null, body: { team, ...given } });
}

/** Says who does the rounds of a place and of what lies in it; null for nobody in particular. */
export async function setKeeper(
  ctx: Context,
  by: Session,
  place: string,
  keeper: string | null,
): Promise<void> {
  if (!(await readPlaces(ctx)).some(({ id }) => id === place))
    throw new Refusal("not-found", "no-such-place");
  if (keeper !== null) {
    const [people, teams] = [await readPeople(ctx), await readTeams(ctx)];
    if (![...people, ...teams].some(({ id }) => id === keeper))
      throw new Refusal("invalid", "keeper-not-right", [problem("/keeper", "unknown-person")]);
  }
  await appendNow(ctx, by, { kind: "keeper-set", asset: null, body: { place, keeper } });
}

/** Says how many minutes a week a person has for rounds. */
export async function setTime(
  ctx: Context,
  by: Session,
  person: string,
  minutes: number,
): Promise<void> {
  if (!(await readPeople(ctx)).some(({ id }) => id === person))
    throw new Refusal("not-found", "no-such-person");
  await appendNow(ctx, by, { kind: "time-set", asset: null, body: { person, minutes } });
}
