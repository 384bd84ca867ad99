import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const REPO = fileURLToPath(new URL("../..", import.meta.url));
export const PACKAGES = ["schemas", "server", "runner", "designer", "tests"];

const CONFIGS = [
  ".gitignore",
  ".dependency-cruiser.cjs",
  "biome.json",
  "package.json",
  "tsconfig.json",
  "vitest.config.ts",
  "tests/setup",
  ...PACKAGES.flatMap((name) => [`${name}/package.json`, `${name}/tsconfig.json`]),
];

export interface Planted {
  root: string;
  /** Runs a tool of the repository's node_modules inside the planted tree. */
  run(tool: string, args: string[]): { status: number | null; output: string };
  remove(): void;
}

function write(root: string, path: string, text: string) {
  mkdirSync(join(root, dirname(path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

/** The planted package sees the planted packages, and the real ones of everybody else. */
function linkModules(root: string, name: string) {
  const real = join(REPO, name, "node_modules");
  for (const entry of existsSync(real) ? readdirSync(real) : []) {
    if (entry.startsWith(".")) continue;
    const scoped = entry.startsWith("@") ? readdirSync(join(real, entry)) : [""];
    for (const inner of scoped) {
      const link = join(root, name, "node_modules", entry, inner);
      const own =
        entry === "@roundbook" ? join(root, inner) : realpathSync(join(real, entry, inner));
      mkdirSync(dirname(link), { recursive: true });
      symlinkSync(own, link, "junction");
    }
  }
}

/** A tree laid out as the repository, under its real configuration, holding only `files`. */
export function plant(files: Record<string, string>): Planted {
  const cache = join(REPO, ".cache");
  mkdirSync(cache, { recursive: true });
  const root = mkdtempSync(join(cache, "planted-"));
  for (const config of CONFIGS) {
    cpSync(join(REPO, config), join(root, config), { recursive: true });
  }
  for (const name of PACKAGES) {
    linkModules(root, name);
    const { exports: doors } = JSON.parse(readFileSync(join(root, name, "package.json"), "utf8"));
    for (const door of Object.values(doors)) {
      if (typeof door === "string") write(root, `${name}/${door}`, "export const door = 1;\n");
    }
  }
  for (const [path, text] of Object.entries(files)) write(root, path, text);
  return {
    root,
    run(tool, args) {
      const file = join(REPO, "node_modules", tool);
      const env = { ...process.env, NO_COLOR: "1", FORCE_COLOR: "0" };
      const done = spawnSync(process.execPath, [file, ...args], {
        cwd: root,
        env,
        encoding: "utf8",
        maxBuffer: 1 << 26,
      });
      return { status: done.status, output: done.stdout + done.stderr };
    },
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
}
