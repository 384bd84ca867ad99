import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build, type Rollup } from "vite";
import type { Row } from "./row.ts";

const TARGET_KB = 45;
/** Packages behind the doors that the runner opens only for a checklist that needs them. */
const ENGINES = /node_modules\/.*(cel-js|re2js|ajv)/;

/** The runner's own sources, without what tests and builds it. */
function* sources(folder: string): Generator<string> {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (/^(node_modules|dist|testing|\..*)$/.test(entry.name)) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* sources(path);
    else if (/(?<!\.test)\.tsx?$/.test(entry.name)) yield path;
  }
}

const IMPORT = /import\s*\{([^}]*)\}\s*from\s*"@roundbook\/schemas"/g;

/** What the runner takes from the one door of the core, without types. */
const namesTaken = (runner: string): string[] => {
  const names = new Set<string>();
  for (const file of sources(runner))
    for (const [, list = ""] of readFileSync(file, "utf8").matchAll(IMPORT))
      for (const name of list.split(",").map((one) => one.trim()))
        if (name !== "" && !name.startsWith("type ")) names.add(name.split(" as ")[0] ?? name);
  return [...names].sort();
};

async function bundle(root: string, code: string): Promise<readonly Rollup.OutputChunk[]> {
  const entry = join(root, "runner/share.ts");
  const built = await build({
    root,
    configFile: false,
    logLevel: "error",
    plugins: [
      {
        name: "entry",
        resolveId: (id) => (id === entry ? entry : undefined),
        load: (id) => (id === entry ? code : undefined),
      },
    ],
    build: {
      write: false,
      target: "es2022",
      rollupOptions: { input: entry, preserveEntrySignatures: "strict" },
    },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (!output || !("output" in output)) throw new Error("nothing was built");
  return output.output.filter((one) => one.type === "chunk");
}

const kilobytes = (chunks: readonly Rollup.OutputChunk[]): number =>
  chunks.reduce((sum, { code }) => sum + gzipSync(code, { level: 9 }).length, 0) / 1000;

/** How much of the core the runner carries, and that the engines are no part of it. */
export const benchShare = async (root: string): Promise<Row[]> => {
  const names = namesTaken(join(root, "runner"));
  const share = await bundle(root, `export { ${names.join(", ")} } from "@roundbook/schemas";`);
  const engine = await bundle(root, `export * from "@roundbook/schemas/formulas";`);
  const carried = share.flatMap(({ moduleIds }) => moduleIds).filter((id) => ENGINES.test(id));
  const size = kilobytes(share);
  const isApart = carried.length === 0;
  return [
    {
      what: "runner's share of the core",
      against: "",
      ratio: null,
      figure: `${size.toFixed(1)} kB gz of ${names.length} names; formula engine ${isApart ? "apart" : "within"}, ${kilobytes(engine).toFixed(1)} kB gz`,
      target: `≤ ${TARGET_KB} kB, engine apart`,
      met: size <= TARGET_KB && isApart,
    },
  ];
};
