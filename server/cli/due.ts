import { type DueRow, type DueStatus, parseCivilDate } from "@roundbook/schemas";
import type { Context } from "../usecases/context.ts";
import { readDue } from "../usecases/read-due.ts";
import { readPlaces } from "../usecases/read-register.ts";
import { say } from "../words/say.ts";
import { readArguments } from "./arguments.ts";
import { DONE, UsageError, type Verb } from "./io.ts";
import { withEstate } from "./open-estate.ts";
import { table } from "./table.ts";

const FLAGS = {
  on: { type: "string" },
  status: { type: "string" },
  site: { type: "string" },
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

async function siteOf(ctx: Context, code: string | undefined): Promise<string | undefined> {
  if (code === undefined) return undefined;
  const sites = (await readPlaces(ctx)).filter(({ level }) => level === "site");
  const found = sites.find((site) => [site.id, site.code, site.name].includes(code));
  if (found) return found.id;
  throw new UsageError(
    `there is no site ${code}; there are: ${sites.map((s) => s.code).join(", ")}`,
  );
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
  usage: "due [--on YYYY-MM-DD] [--status STATUS] [--site CODE] [--json]",
  async run(args, io) {
    const { values } = readArguments(args, [], FLAGS);
    const { on } = values;
    if (on !== undefined && parseCivilDate(on) === undefined)
      throw new UsageError(`--on ${on}: there is no such day; write YYYY-MM-DD`);
    const status = statusOf(values.status);
    await withEstate(io, async (ctx) => {
      const site = await siteOf(ctx, values.site);
      let cursor: string | undefined;
      do {
        const page = await readDue(ctx, { on, status, site, cursor, limit: PAGE });
        if (values.json) for (const row of page.rows) await io.out(JSON.stringify(told(row)));
        else if (page.rows.length > 0) await io.out(table(page.rows.map(cells)));
        cursor = page.next ?? undefined;
      } while (cursor !== undefined);
    });
    return DONE;
  },
};
