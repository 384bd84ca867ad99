import { saveBlock } from "../usecases/save-block.ts";
import { readArguments } from "./arguments.ts";
import { DONE, UsageError, type Verb } from "./io.ts";
import { enter } from "./open-estate.ts";
import { readJson } from "./read-json.ts";

const nameOf = (document: unknown): string => {
  const name = (document as { name?: unknown } | null)?.name;
  return typeof name === "string" ? name : "";
};

/** Keeps the block in FILE under its own name, over the revision that is said. */
export const block: Verb = {
  usage: "block FILE [--revision N] [--json]   (a new block without --revision)",
  async run(args, io) {
    const { values, positionals } = readArguments(args, ["FILE"], {
      revision: { type: "string", default: "0" },
    });
    if (!/^\d{1,9}$/.test(values.revision))
      throw new UsageError(`--revision ${values.revision} is no whole number`);
    const [file = ""] = positionals;
    const document = await readJson(file);
    const given = { revision: Number(values.revision), block: document as Record<string, unknown> };
    const kept = await enter(io, (ctx, by) => saveBlock(ctx, by, nameOf(document), given));
    const { name, revision, usedBy } = kept;
    await io.out(
      values.json
        ? JSON.stringify({ name, revision, usedBy })
        : `block ${name}, revision ${revision}, used by ${usedBy.length}`,
    );
    return DONE;
  },
};
