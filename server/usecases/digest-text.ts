import type { Counted, DueRow, PlaceRow, Role } from "@roundbook/schemas";
import { say } from "../words/say.ts";
import type { Context, Session } from "./context.ts";
import { countDue } from "./count-due.ts";
import { civil, dayAsked, readDue } from "./read-due.ts";
import { readPlaces } from "./read-register.ts";

const MOST_LINES = 50;
const A_WEEK = 7;

const many = ({ count, more }: Counted): string => `${count}${more ? " or more" : ""}`;

const line = ({ number, description, intervalTitle, latest, why }: DueRow): string =>
  `${number} ${description}, ${intervalTitle}: by ${latest} (${say(why)})`;

interface Part {
  readonly title: string;
  readonly rows: readonly DueRow[];
  /** Whether there are more than these. */
  readonly more: boolean;
}

const written = ({ title, rows, more }: Part): string[] =>
  rows.length === 0
    ? []
    : ["", title, ...rows.map((row) => `- ${line(row)}`), ...(more ? ["- and more"] : [])];

type Scope = { readonly keeper?: string; readonly site?: string };

async function part(
  ctx: Context,
  title: string,
  asked: Scope & { status: DueRow["status"] },
): Promise<Part> {
  const { rows, next } = await readDue(ctx, { ...asked, limit: MOST_LINES });
  return { title, rows, more: next !== null };
}

/** Pages that are read of one status: beyond, a mail is no place to read it. */
const MOST_PAGES = 25;

/** Due from today on within a week, whatever its window says. */
async function coming(ctx: Context, scope: Scope, today: number): Promise<readonly DueRow[]> {
  const rows: DueRow[] = [];
  const last = civil(today + A_WEEK);
  for (const status of ["due", "late-window", "early", "not-yet"] as const) {
    let cursor: string | undefined;
    for (let page = 0; page < MOST_PAGES; page += 1) {
      const found = await readDue(ctx, { ...scope, status, cursor, limit: 200 });
      rows.push(...found.rows.filter((row) => row.due <= last));
      // Nothing whose window opens after the week can be due in it.
      const beyond = (found.rows.at(-1)?.earliest ?? "") > last;
      if (found.next === null || beyond) break;
      cursor = found.next;
    }
  }
  return rows.sort((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : 0));
}

async function ofSite(ctx: Context, site: PlaceRow, today: number): Promise<string[]> {
  const counts = await countDue(ctx, { site: site.id });
  const soon = await coming(ctx, { site: site.id }, today);
  const facts = [
    `${many(counts.overdue)} overdue`,
    ...(counts.neverDone.count > 0 ? [`${many(counts.neverDone)} never done`] : []),
    ...(counts.blocked.count > 0 ? [`${many(counts.blocked)} not to be used before a check`] : []),
    ...(counts.undecided.count > 0 ? [`${many(counts.undecided)} undecided`] : []),
    `${soon.length} due by ${civil(today + A_WEEK)}`,
  ];
  return [`${site.code} ${site.name}: ${facts.join(", ")}`];
}

async function forDesk(ctx: Context, today: number): Promise<string[]> {
  const sites = (await readPlaces(ctx)).filter(({ level }) => level === "site");
  const lines: string[] = [];
  for (const site of sites) lines.push(...(await ofSite(ctx, site, today)));
  const soon = await coming(ctx, {}, today);
  const unkept = soon.filter(({ keeper }) => keeper === null);
  return [
    ...lines,
    ...written(await part(ctx, "Overdue", { status: "overdue" })),
    ...written(await part(ctx, "Never done", { status: "never-done" })),
    ...written(await part(ctx, "Not to be used before a check", { status: "blocked" })),
    ...written(await part(ctx, "Undecided", { status: "undecided" })),
    ...written({
      title: "Due within a week, and nobody keeps the place",
      rows: unkept.slice(0, MOST_LINES),
      more: unkept.length > MOST_LINES,
    }),
  ];
}

async function forRound(ctx: Context, keeper: string, today: number): Promise<string[]> {
  const soon = await coming(ctx, { keeper }, today);
  const parts = [
    await part(ctx, "Overdue", { keeper, status: "overdue" }),
    await part(ctx, "Never done", { keeper, status: "never-done" }),
    await part(ctx, "Not to be used before a check", { keeper, status: "blocked" }),
    await part(ctx, "Undecided", { keeper, status: "undecided" }),
    {
      title: `Due by ${civil(today + A_WEEK)}`,
      rows: soon.slice(0, MOST_LINES),
      more: soon.length > MOST_LINES,
    },
  ];
  const lines = parts.flatMap(written);
  return lines.length === 0 ? ["Nothing is due at your places this week."] : lines.slice(1);
}

async function forAuditor(ctx: Context): Promise<string[]> {
  const { overdue, neverDone, excused, undecided } = await countDue(ctx, {});
  return [
    `${many(overdue)} overdue`,
    `${many(neverDone)} never done`,
    `${many(excused)} excused while closed; excused is not done`,
    `${many(undecided)} undecided`,
  ];
}

/** What a person is told by the digest of a day, by role. */
export async function digestText(
  ctx: Context,
  { person, role }: Session,
  origin: string | undefined,
): Promise<{ subject: string; text: string }> {
  const today = await dayAsked(ctx);
  const words: Readonly<Record<Role, () => Promise<string[]>>> = {
    owner: () => forDesk(ctx, today),
    manager: () => forDesk(ctx, today),
    inspector: () => forRound(ctx, person, today),
    auditor: () => forAuditor(ctx),
  };
  const lines = await words[role]();
  const foot = [
    "",
    "Dates follow from the logbook and the intervals as they stood this morning.",
    ...(origin === undefined ? [] : [origin]),
  ];
  return {
    subject: `Roundbook, ${civil(today)}: what is due`,
    text: [...lines, ...foot].join("\n"),
  };
}
