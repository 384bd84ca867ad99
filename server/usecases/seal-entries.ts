import {
  type Entry,
  type EntryFlag,
  type EntryOf,
  type EntryOutcome,
  type Judgement,
  type Problem,
  problem,
  type SealedLeaf,
  type SignedEntry,
} from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import { appendLog, keepContents } from "../store/append-log.ts";
import { isBusy } from "../store/busy.ts";
import type { Db } from "../store/db.ts";
import { project } from "../store/projections/project.ts";
import { entries, entryDocs } from "../store/schema/log.ts";
import { checkAuthor } from "./check-author.ts";
import { checkReferences } from "./check-references.ts";
import { inspectionOf } from "./check-result.ts";
import { type CheckedForm, checkSigned } from "./check-signed.ts";
import { clockDiffers } from "./clock-differs.ts";
import type { Context, Session } from "./context.ts";
import { judgeAgain, judgeSealed } from "./judge-again.ts";
import { prepareEntry } from "./prepare-entry.ts";

type Form = Extract<CheckedForm, { ok: true }>;
type Ruling =
  | {
      readonly is: "fit";
      readonly judgement: Judgement | null;
      readonly flags: readonly EntryFlag[];
    }
  | { readonly is: "retry-later" | "refused"; readonly problems: readonly Problem[] };

async function sealedBefore(tx: Db, { entry, hash }: Form): Promise<EntryOutcome | null> {
  const [row] = await tx
    .select({ seq: entries.seq, hash: entries.hash, leaf: entryDocs.leaf })
    .from(entries)
    .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
    .where(eq(entries.id, entry.id));
  if (row === undefined) return null;
  if (row.hash === hash) {
    const leaf: SealedLeaf = JSON.parse(row.leaf);
    return { id: entry.id, outcome: "already", seq: row.seq, leaf };
  }
  const problems = [problem("/entry/id", "id-sealed-with-other-content", { sealed: row.hash })];
  return { id: entry.id, outcome: "refused", problems };
}

async function rule(ctx: Context, tx: Db, signed: SignedEntry, entry: Entry): Promise<Ruling> {
  const author = await checkAuthor(tx, signed, entry);
  if (author.problems.length > 0) return { is: "refused", problems: author.problems };
  const named = await checkReferences(tx, entry);
  if (named.wrong.length > 0) return { is: "refused", problems: named.wrong };
  if (named.unknown.length > 0) return { is: "retry-later", problems: named.unknown };
  const flags = new Set<EntryFlag>([...author.flags, ...named.flags]);
  if (clockDiffers(entry, ctx.clock())) flags.add("clock-differs");
  if (entry.kind === "result-received") return ruleResult(ctx, tx, entry, [...flags]);
  if (entry.kind !== "inspection") return { is: "fit", judgement: null, flags: [...flags] };
  const judged = await judgeAgain(ctx, tx, entry);
  if (judged === null) throw new Error("an issued checklist has lost its document");
  if (judged.problems.length > 0) return { is: "refused", problems: judged.problems };
  if (judged.differs) flags.add("judgement-differs");
  return { is: "fit", judgement: judged.judgement, flags: [...flags] };
}

async function ruleResult(
  ctx: Context,
  tx: Db,
  entry: EntryOf<"result-received">,
  flags: readonly EntryFlag[],
): Promise<Ruling> {
  const found = await inspectionOf(ctx, tx, entry);
  if (!found.ok) {
    const problems = found.problems.map((one) => ({
      ...one,
      pointer: `/entry/body${one.pointer}`,
    }));
    return { is: found.unknown ? "retry-later" : "refused", problems };
  }
  return { is: "fit", judgement: await judgeSealed(ctx, tx, found.inspection), flags };
}

async function sealOne(
  ctx: Context,
  tx: Db,
  session: Session,
  signed: SignedEntry,
  form: Form,
): Promise<EntryOutcome> {
  const { id } = form.entry;
  const before = await sealedBefore(tx, form);
  if (before !== null) return before;
  const ruling = await rule(ctx, tx, signed, form.entry);
  if (ruling.is !== "fit") return { id, outcome: ruling.is, problems: ruling.problems };
  const prepared = prepareEntry(
    form.entry,
    ruling.judgement,
    {
      flags: [...ruling.flags].sort(),
      signature: signed.signature,
      deliveredBy: session.person,
      receivedAt: ctx.clock(),
    },
    { canonical: form.canonical, hash: form.hash },
  );
  await keepContents(tx, signed.contents);
  const sealed = await appendLog(tx, [prepared]);
  await project(tx, sealed);
  const [one] = sealed;
  if (one === undefined) throw new Error("an entry was sealed without a leaf");
  return { id, outcome: "sealed", seq: one.leaf.seq, leaf: one.leaf };
}

/** An id for the answer even when what was sent is no entry. */
const idOf = (signed: SignedEntry): string => {
  const entry: unknown = signed.entry;
  const id = typeof entry === "object" && entry !== null && "id" in entry ? entry.id : "";
  return typeof id === "string" ? id : "";
};

/**
 * Seals what devices made, answered per entry in the order given: a savepoint each, one commit for
 * all, answered after it. Little is refused: what is ill-formed, altered or impersonated. What
 * names something unknown here may come again; all else is sealed, with flags where it must be
 * mended.
 */
export async function sealEntries(
  ctx: Context,
  session: Session,
  signed: readonly SignedEntry[],
): Promise<EntryOutcome[]> {
  const forms = signed.map((one) => ({ one, form: checkSigned(one) }));
  return ctx.store.write(async (tx) => {
    const outcomes: EntryOutcome[] = [];
    for (const { one, form } of forms) {
      if (!form.ok) {
        outcomes.push({ id: idOf(one), outcome: "refused", problems: form.problems });
        continue;
      }
      try {
        outcomes.push(await tx.transaction((point) => sealOne(ctx, point, session, one, form)));
      } catch (error) {
        if (isBusy(error)) throw error;
        // A fault of ours: the device keeps its entry, and its neighbours are sealed.
        ctx.report(error);
        const problems = [problem("", "server-fault")];
        outcomes.push({ id: form.entry.id, outcome: "retry-later", problems });
      }
    }
    return outcomes;
  });
}
