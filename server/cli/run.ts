import { Refusal } from "../usecases/refusal.ts";
import { say, sayProblem } from "../words/say.ts";
import { block } from "./block.ts";
import { assetType, interval, issue, place } from "./define.ts";
import { due } from "./due.ts";
import { history } from "./history.ts";
import { importing } from "./import.ts";
import { type Io, NOT_RIGHT, UsageError, type Verb } from "./io.ts";
import { judge } from "./judge.ts";
import { exporting, rebuilding } from "./logbook.ts";
import { next } from "./next.ts";
import { starter, starters } from "./starters.ts";

const VERBS: Readonly<Record<string, Verb>> = {
  judge,
  next,
  due,
  history,
  import: importing,
  issue,
  block,
  "asset-type": assetType,
  interval,
  place,
  /** A site is a place without a parent. */
  site: place,
  starters,
  starter,
  rebuild: rebuilding,
  export: exporting,
};

const usages = (): string[] => [
  "usage: npm run -s cli -- VERB …",
  ...Object.values(VERBS)
    .filter((verb, index, all) => all.indexOf(verb) === index)
    .map(({ usage }) => `  ${usage}`),
];

/** Runs one verb; gives the exit status. What is wrong is said on standard error, never thrown. */
export async function runCli(args: readonly string[], io: Io): Promise<number> {
  const [name = "", ...rest] = args;
  const verb = Object.hasOwn(VERBS, name) ? VERBS[name] : undefined;
  if (!verb) {
    if (name !== "") io.err(`there is no verb ${name}`);
    for (const line of usages()) io.err(line);
    return NOT_RIGHT;
  }
  try {
    return await verb.run(rest, io);
  } catch (error) {
    for (const line of told(error, verb)) io.err(line);
    return NOT_RIGHT;
  }
}

function told(error: unknown, verb: Verb): string[] {
  if (error instanceof UsageError) return [error.message, `usage: ${verb.usage}`];
  if (error instanceof Refusal) {
    const { code, problems } = error;
    return problems.length > 0 ? problems.map(sayProblem) : [say({ code, params: {} })];
  }
  // Files that are not there, disks that are full: the system's own words name the place.
  if (error instanceof Error && "syscall" in error) return [error.message];
  throw error;
}
