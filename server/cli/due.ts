import { type DueRow, type DueStatus, parseCivilDate } from "@roundbook/schemas";
import type { Context } from "../usecases/context.ts";
import type { DueScope } from "../usecases/due-scope.ts";
import { readDue } from "../usecases/read-due.ts";
import { readAssetTypes, readPeople, readPlaces } from "../usecases/read-register.ts";
import { readTeams } from "../usecases/read-teams.ts";
import { say } from "../words/say.ts";
import { readArguments } from "./arguments.ts";
import { DONE, UsageError, type Verb } from "./io.ts";
import { withEstate } from "./open-estate.ts";
import { table } from "./table.ts";

const FLAGS = {
  on: { type: "string" },
  status: { type: "string" },
  site: { type: "string" },
  place: { type: "string" },
  type: { type: "string" },
  keeper: { type: "string" },
  find: { type: "string" },
} as const;
const STATUSES: Readonly<Record<DueStatus, true>> = {
  "not-yet": true,
  early: true,
  due: true,
  "late-window": true,
  overdue: true,
  "never-done": true,
  undecided: true,
  excused: true,
  blocked: true,
};
const PAGE = 200;

const isStatus = (text: string): text is DueStatus => Object.hasOwn(STATUSES, text);

function statusOf(text: string | undefined): DueStatus | undefined {
  if (text === undefined || isStatus(text)) return text;
  throw new UsageError(`--status is one of ${Object.keys(STATUSES).join(", ")}`);
}

interface Named {
  readonly id: string;
  /** What people call it. */
  readonly names: readonly string[];
}

/** The id of what is called so. @throws UsageError where nothing is, or more than one. */
function idOf(flag: string, called: string | undefined, all: readonly Named[]) {
  if (called === undefined) return undefined;
  const found = all.filter(({ id, names }) => [id, ...names].includes(called));
  const [one] = found;
  if (one !== undefined && found.length === 1) return one.id;
  const told = (some: readonly Named[]) =>
    some.map(({ id, names }) => (names.length === 0 ? id : names.join(" "))).join(", ");
  if (one === undefined)
    throw new UsageError(`there is no ${flag} ${called}; there are: ${told(all) || "none"}`);
  const ids = found.map(({ id, names }) => `${id} (${names.join(" ")})`).join(", ");
  throw new UsageError(`--${flag} ${called} is more than one: say which by its id: ${ids}`);
}

type Values = Partial<Readonly<Record<"site" | "place" | "type" | "keeper", string>>>;

/** The ids of what the flags name. @throws UsageError where one names nothing, or more than one. */
export async function scopeOf(ctx: Context, values: Values): Promise<DueScope> {
  const places = await readPlaces(ctx);
  const named = (some: typeof places) =>
    some.map(({ id, code, name }) => ({ id, names: [code, name] }));
  const keepers = [...(await readTeams(ctx)), ...(await readPeople(ctx))];
  return {
    site: idOf("site", values.site, named(places.filter(({ level }) => level === "site"))),
    place: idOf("place", values.place, named(places)),
    assetType: idOf(
      "type",
      values.type,
      (await readAssetTypes(ctx)).map(({ assetType, title }) => ({
        id: assetType,
        names: [title],
      })),
    ),
    keeper: idOf(
      "keeper",
      values.keeper,
      keepers.map(({ id, name }) => ({ id, names: name === null ? [] : [name] })),
    ),
  };
}

/** `asset` and `interval` as people call them are the number and the title; the ids ride along. */
const told = ({ asset, number, why, ...row }: DueRow) => ({
  asset: number,
  ...row,
  assetId: asset,
  why: say(why),
});

const cells = ({ number, description, earliest, due, latest, status, intervalTitle }: DueRow) => [
  number,
  status,
  due,
  `${earliest} to ${latest}`,
  intervalTitle,
  description,
];

export const due: Verb = {
  usage:
    "due [--on YYYY-MM-DD] [--status STATUS] [--site CODE] [--place CODE] [--type TYPE] [--keeper NAME] [--find WORDS] [--json]",
  async run(args, io) {
    const { values } = readArguments(args, [], FLAGS);
    const { on } = values;
    if (on !== undefined && parseCivilDate(on) === undefined)
      throw new UsageError(`--on ${on}: there is no such day; write YYYY-MM-DD`);
    const status = statusOf(values.status);
    await withEstate(io, async (ctx) => {
      const scope = await scopeOf(ctx, values);
      let cursor: string | undefined;
      do {
        const page = await readDue(ctx, {
          ...scope,
          on,
          status,
          q: values.find,
          cursor,
          limit: PAGE,
        });
        if (values.json) for (const row of page.rows) await io.out(JSON.stringify(told(row)));
        else if (page.rows.length > 0) await io.out(table(page.rows.map(cells)));
        cursor = page.next ?? undefined;
      } while (cursor !== undefined);
    });
    return DONE;
  },
};
