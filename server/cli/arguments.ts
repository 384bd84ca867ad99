import { type ParseArgsConfig, parseArgs } from "node:util";
import { UsageError } from "./io.ts";

type Flags = NonNullable<ParseArgsConfig["options"]>;

/** Positional arguments, exactly as many as named, and flags; `--json` is common to all verbs. */
export function readArguments<const F extends Flags>(
  args: readonly string[],
  names: readonly string[],
  flags: F,
) {
  const parsed = parse(args, flags);
  const given = parsed.positionals.length;
  if (given < names.length) throw new UsageError(`${names[given]} is missing`);
  if (given > names.length)
    throw new UsageError(`"${parsed.positionals[names.length]}" is one too many`);
  return parsed;
}

function parse<const F extends Flags>(args: readonly string[], flags: F) {
  try {
    return parseArgs({
      args: [...args],
      options: { ...flags, json: { type: "boolean", default: false } } as const,
      allowPositionals: true,
      strict: true,
    });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
