import type { EntryOf } from "@roundbook/schemas";
import { type Append, type Appended, appendWithin, type Made } from "./append-entries.ts";
import type { Context } from "./context.ts";
import { judgeSealed } from "./judge-again.ts";

/**
 * Appends one entry after the other in one transaction, each inspection judged against what the
 * log holds by then: for checklists whose limits compare with the inspection before.
 */
export const appendInTurn = (ctx: Context, { entries, contents }: Append): Promise<Appended> =>
  ctx.store.write(async (tx) => {
    const all: Appended[] = [];
    for (const [position, made] of entries.entries()) {
      const texts = position === 0 ? contents : [];
      const id = made.id ?? ctx.newId();
      const one: Made = { ...made, id };
      if (one.kind === "inspection") {
        const judged = await judgeSealed(ctx, tx, one as unknown as EntryOf<"inspection">);
        const body = { ...one.body, judgement: { ...(judged ?? one.body.judgement) } };
        all.push(await appendWithin(ctx, tx, { entries: [{ ...one, body }], contents: texts }));
      } else all.push(await appendWithin(ctx, tx, { entries: [one], contents: texts }));
    }
    return {
      sealed: all.flatMap(({ sealed }) => sealed),
      already: all.flatMap(({ already }) => already),
    };
  });
