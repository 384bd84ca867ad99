import { writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { benchDesigning } from "./designing.ts";
import { benchDueWindows } from "./due-windows.ts";
import { benchFilling } from "./filling.ts";
import { benchFirstLoad } from "./first-load.ts";
import { benchImporting } from "./importing.ts";
import { benchJudging } from "./judging.ts";
import { benchReading } from "./reading.ts";
import { benchRound } from "./round.ts";
import { printTable, type Row } from "./row.ts";
import { benchSealing } from "./sealing.ts";
import { benchShare } from "./share.ts";

const PARTS: Record<string, () => Row[] | Promise<Row[]>> = {
  judging: benchJudging,
  sealing: benchSealing,
  importing: benchImporting,
  reading: benchReading,
  designing: benchDesigning,
  due: benchDueWindows,
  share: () => benchShare(process.cwd()),
  filling: () => benchFilling(process.cwd()),
  round: () => benchRound(process.cwd()),
  load: () => benchFirstLoad(join(process.cwd(), "runner/dist")),
};

/** `npm run bench` measures everything, `npm run bench judging load` two parts. */
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  process.stderr.write(
    `bench: no part ${unknown.join(", ")}; there are ${Object.keys(PARTS).join(", ")}\n`,
  );
  process.exit(2);
}
const rows: Row[] = [];
for (const [name, part] of Object.entries(PARTS)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  process.stderr.write(`measuring ${name}\n`);
  rows.push(...(await part()));
}
process.stdout.write(`${printTable(rows)}\n`);
writeFileSync(
  "bench-results.json",
  `${JSON.stringify({ node: process.version, cpus: cpus().length, rows }, null, 2)}\n`,
);
