import { existsSync } from "node:fs";
import { defineConfig } from "vite";

// Native or self-locating packages stay outside; everything else is bundled, workspace packages
// included, so that pnpm's strict folders cannot hide a package's dependency from the bundle.
const external = ["@libsql/client", "libsql", "@node-rs/argon2", "playwright-core", "vite"];

const ENTRIES: Record<string, { folder: string; file: string; input: string[] }> = {
  server: { folder: "server", file: "[name].mjs", input: ["server/main.ts", "server/cli.ts"] },
  bench: { folder: "tests", file: "bench.mjs", input: ["tests/bench/main.ts"] },
};

export default defineConfig(({ mode }) => {
  const part = ENTRIES[mode];
  if (!part) throw new Error(`--mode is one of ${Object.keys(ENTRIES).join(", ")}`);
  return {
    ssr: { noExternal: true, external, target: "node" },
    build: {
      ssr: true,
      outDir: `${part.folder}/dist`,
      emptyOutDir: true,
      target: "node20",
      minify: false,
      rollupOptions: {
        input: part.input.filter((file) => existsSync(file)),
        output: { entryFileNames: part.file, chunkFileNames: "chunk-[name]-[hash].mjs" },
      },
    },
  };
});
