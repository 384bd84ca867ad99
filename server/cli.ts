import { once } from "node:events";
import { resolve } from "node:path";
import { runCli } from "./cli/run.ts";

const { stdin, stdout, stderr } = process;

// The reader of a pipe may have seen enough, as `head` has.
stdout.on("error", (error: NodeJS.ErrnoException) => {
  process.exit(error.code === "EPIPE" ? 0 : 2);
});

process.exitCode = await runCli(process.argv.slice(2), {
  stdin,
  out: async (line) => {
    if (!stdout.write(`${line}\n`)) await once(stdout, "drain");
  },
  err: (line) => stderr.write(`${line}\n`),
  data: resolve(process.env.ROUNDBOOK_DATA ?? "data"),
  clock: () => Date.now(),
});
