import { readLog } from "../usecases/read-history.ts";
import { rebuild } from "../usecases/rebuild.ts";
import { readArguments } from "./arguments.ts";
import { DONE, type Verb } from "./io.ts";
import { withEstate } from "./open-estate.ts";

export const rebuilding: Verb = {
  usage: "rebuild [--json]",
  async run(args, io) {
    const { values } = readArguments(args, [], {});
    const done = await withEstate(io, rebuild);
    const plain = `${done.entries} entries in ${done.milliseconds} ms, ${done.perSecond} a second`;
    await io.out(values.json ? JSON.stringify(done) : plain);
    return DONE;
  },
};

/** Lines of JSON either way: a log is for programs to read and verify. */
export const exporting: Verb = {
  usage: "export [--json]",
  async run(args, io) {
    readArguments(args, [], {});
    await withEstate(io, async (ctx) => {
      for await (const { entry, leaf, contents } of readLog(ctx))
        await io.out(JSON.stringify({ entry, leaf, contents }));
    });
    return DONE;
  },
};
