import { appendEntries } from "./append-entries.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import { commitText } from "./commit-text.ts";
import type { Context, Session } from "./context.ts";
import { readEstate } from "./create-estate.ts";
import { derivedId } from "./import/identity.ts";
import { instantOf } from "./instant-of.ts";
import { readPerson } from "./read-register.ts";

/** A part of the program that enters something by itself: to name a real person would be false. */
export type Program = "Command line" | "Server";

export async function programPerson(ctx: Context, program: Program): Promise<Session> {
  const estate = await readEstate(ctx);
  return {
    person: derivedId("person", estate?.id ?? "", program.toLowerCase()),
    role: "manager",
  };
}

/** Adds the program as a person of the estate when it first enters something. */
export async function enterProgram(ctx: Context, program: Program): Promise<Session> {
  const by = await programPerson(ctx, program);
  const { person, role } = by;
  if (await readPerson(ctx, person)) return by;
  const { commitment, content } = commitText(program);
  await appendEntries(ctx, {
    entries: [
      {
        kind: "person-added",
        id: derivedId("person-added", person),
        asset: null,
        author: person,
        civilDate: civilNow(ctx, await estateZone(ctx)),
        happenedAt: instantOf(ctx.clock()),
        body: { person, role, name: commitment },
      },
    ],
    contents: [content],
  });
  return by;
}
