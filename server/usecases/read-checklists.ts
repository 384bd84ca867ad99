import type { ChecklistRow } from "@roundbook/schemas";
import { and, asc, desc, eq, type SQL, sql } from "drizzle-orm";
import { among } from "../store/among.ts";
import type { Db } from "../store/db.ts";
import { checklistDocs, checklists } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { civil } from "./read-due.ts";

const newest = sql`${checklists.issue} = (select max(issue) from checklists as other where other.id = ${checklists}.id)`;

const select = (db: Db, where: SQL | undefined) =>
  db
    .select({ head: checklists, document: checklistDocs.document })
    .from(checklists)
    .innerJoin(checklistDocs, eq(checklistDocs.hash, checklists.hash))
    .where(where);
type Stored = Awaited<ReturnType<typeof select>>[number];

const checklistRow = ({ head, document }: Stored): ChecklistRow => ({
  id: head.id,
  issue: head.issue,
  hash: head.hash,
  title: head.title,
  status: head.withdrawn ? "withdrawn" : "issued",
  issuedOn: civil(head.issuedOn),
  document,
});

/** The newest issue of every checklist, or of some. */
export async function readChecklists(
  ctx: Context,
  ids?: Iterable<string>,
): Promise<ChecklistRow[]> {
  const some = ids === undefined ? undefined : among(checklists.id, ids);
  const rows = await select(ctx.store.db, and(newest, some)).orderBy(
    asc(checklists.title),
    asc(checklists.id),
  );
  return rows.map(checklistRow);
}

/** Any issue, for ever; of issues with one content the newest. */
export async function readChecklist(ctx: Context, hash: string): Promise<ChecklistRow | null> {
  const [row] = await select(ctx.store.db, eq(checklists.hash, hash))
    .orderBy(desc(checklists.seq))
    .limit(1);
  return row ? checklistRow(row) : null;
}

/** Every issue of one checklist, newest first. */
export async function readIssues(ctx: Context, checklist: string): Promise<ChecklistRow[]> {
  const rows = await select(ctx.store.db, eq(checklists.id, checklist)).orderBy(
    desc(checklists.issue),
  );
  return rows.map(checklistRow);
}

export async function readNewestIssue(
  ctx: Context,
  checklist: string,
): Promise<ChecklistRow | null> {
  const [row] = await select(ctx.store.db, eq(checklists.id, checklist))
    .orderBy(desc(checklists.issue))
    .limit(1);
  return row ? checklistRow(row) : null;
}
