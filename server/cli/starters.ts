import { STARTERS } from "@roundbook/schemas/starters";
import { readArguments } from "./arguments.ts";
import { DONE, UsageError, type Verb } from "./io.ts";
import { table } from "./table.ts";

/** What a list of starters is chosen from. */
const listed = STARTERS.map(({ key, title, assetType, note }) => ({
  key,
  title,
  assetType: assetType.name,
  note,
}));

export const starters: Verb = {
  usage: "starters [--json]   (checklists to begin with, each an example to confirm locally)",
  async run(args, io) {
    const { values } = readArguments(args, [], {});
    if (!values.json) await io.out(table(listed.map(({ key, title, note }) => [key, title, note])));
    else for (const one of listed) await io.out(JSON.stringify(one));
    return DONE;
  },
};

/** Prints the document as `issue` reads it; with `--whole` what goes with it too. */
export const starter: Verb = {
  usage: "starter KEY [--whole]   (its checklist as JSON, for `issue`)",
  async run(args, io) {
    const flags = { whole: { type: "boolean", default: false } } as const;
    const { values, positionals } = readArguments(args, ["KEY"], flags);
    const [key = ""] = positionals;
    const found = STARTERS.find((one) => one.key === key);
    if (found === undefined)
      throw new UsageError(
        `there is no starter ${key}; there are: ${listed.map((one) => one.key).join(", ")}`,
      );
    await io.out(JSON.stringify(values.whole ? found : found.checklist, null, 2));
    return DONE;
  },
};
