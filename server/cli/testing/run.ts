import { join } from "node:path";
import { tempFolder } from "../../store/testing/temp-store.ts";
import { runCli } from "../run.ts";

const NOW = Date.parse("2026-10-13T09:40:00.000Z");

/** The command line over a folder of its own. */
export function commandLineOf(data = join(tempFolder(), "data")) {
  return async (args: readonly string[], input: string | Uint8Array = "") => {
    const out: string[] = [];
    const err: string[] = [];
    const status = await runCli(args, {
      stdin: (async function* () {
        yield Buffer.from(input);
      })(),
      out: async (line) => void out.push(line),
      err: (line) => void err.push(line),
      data,
      clock: () => NOW,
    });
    return { status, out, err };
  };
}
