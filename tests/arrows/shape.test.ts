import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { PACKAGES, REPO } from "./planted.ts";

const HIDDEN_FOLDERS = [".ci"];
const NOT_SOURCE = new Set(["node_modules", "dist", "data", ".cache", ".git"]);
const LIMIT = 300;

/** Every file that is source: what is installed, built, cached or entered at run time is not. */
function files(folder = ""): string[] {
  return readdirSync(join(REPO, folder), { withFileTypes: true }).flatMap((entry) => {
    if (NOT_SOURCE.has(entry.name)) return [];
    const path = folder === "" ? entry.name : `${folder}/${entry.name}`;
    return entry.isDirectory() ? files(path) : [path];
  });
}

function tooLong(paths: string[], read: (path: string) => string): string[] {
  const sources = paths.filter((path) => /\.(tsx?|css|mjs|cjs)$/.test(path));
  return sources.filter((path) => read(path).trimEnd().split("\n").length > LIMIT);
}

function strayFolders(paths: string[]): string[] {
  const folders = new Set(paths.filter((path) => path.includes("/")).map((p) => p.split("/")[0]));
  const allowed = new Set<string | undefined>([...PACKAGES, ...HIDDEN_FOLDERS]);
  return [...folders].filter((folder) => !allowed.has(folder)).map(String);
}

it(`no source file is longer than ${LIMIT} lines`, () => {
  expect(tooLong(files(), (path) => readFileSync(join(REPO, path), "utf8"))).toEqual([]);
});

it("there are no top-level folders but the packages", () => {
  expect(strayFolders(files())).toEqual([]);
});

it("a file of 301 lines and a stray folder are found", () => {
  expect(tooLong(["a.css", "b.ts"], (path) => "x\n".repeat(path === "a.css" ? 301 : 300))).toEqual([
    "a.css",
  ]);
  expect(strayFolders(["run.mjs", "lib/x.ts", "tests/x.ts"])).toEqual(["lib"]);
});
