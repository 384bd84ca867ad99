import { type ChildProcess, spawn } from "node:child_process";
import {
  chmodSync,
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { delimiter, join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type Planted, plant, REPO } from "../arrows/planted.ts";

const CLI = `import { door } from "@roundbook/schemas";
const [status] = process.argv.slice(2);
process.stdout.write(\`door \${door}\\n\`);
process.exitCode = Number(status ?? 0);
`;
const MAIN = `process.on("SIGTERM", () => { console.log("closing"); process.exit(7); });
setInterval(() => {}, 1000);
console.log("serving");
`;

let planted: Planted;
const put = (path: string, text: string) => writeFileSync(join(planted.root, path), text);

/** run.mjs in the planted tree, with an npx that only notes how it was called. */
function start(args: string[]): ChildProcess {
  const PATH = `${join(planted.root, "bin")}${delimiter}${process.env.PATH}`;
  const env = { ...process.env, PATH, npm_lifecycle_event: "" };
  return spawn(process.execPath, ["run.mjs", ...args], { cwd: planted.root, env });
}

function ended(child: ChildProcess) {
  let stdout = "";
  let stderr = "";
  child.stdout?.on("data", (chunk) => {
    stdout += chunk;
  });
  child.stderr?.on("data", (chunk) => {
    stderr += chunk;
  });
  return new Promise<{ status: number | null; stdout: string; stderr: string }>((resolve) => {
    child.on("close", (status) => resolve({ status, stdout, stderr }));
  });
}

const run = (...args: string[]) => ended(start(args));
const installs = () => readFileSync(join(planted.root, "npx.log"), "utf8").trim().split("\n");

beforeAll(() => {
  planted = plant({
    "server/cli.ts": CLI,
    "server/main.ts": MAIN,
    "npx.log": "",
    "bin/npx": `#!/bin/sh\necho "$@" >> npx.log\n`,
  });
  chmodSync(join(planted.root, "bin/npx"), 0o755);
  for (const file of ["run.mjs", "vite.node.config.ts", "pnpm-lock.yaml", "pnpm-workspace.yaml"]) {
    cpSync(join(REPO, file), join(planted.root, file));
  }
  mkdirSync(join(planted.root, "node_modules"));
  for (const entry of readdirSync(join(REPO, "node_modules"))) {
    if (entry.startsWith(".")) continue;
    symlinkSync(join(REPO, "node_modules", entry), join(planted.root, "node_modules", entry));
  }
});

afterAll(() => planted.remove());

it("the first call installs the frozen lock and builds; standard output is the program's alone", async () => {
  const first = await run("cli");
  expect(first).toMatchObject({ status: 0, stdout: "door 1\n" });
  expect(first.stderr).toContain("building server");
  expect(installs()).toEqual([expect.stringMatching(/^--yes pnpm@\S+ install --frozen-lockfile$/)]);
});

it("with nothing changed nothing is installed or built, and nothing else is said", async () => {
  expect(await run("cli")).toEqual({ status: 0, stdout: "door 1\n", stderr: "" });
  expect(installs()).toHaveLength(1);
});

it("the program's exit status is the command's", async () => {
  expect((await run("cli", "2")).status).toBe(2);
});

it("a changed source is built again, by one of two commands in a pipe", async () => {
  put("schemas/index.ts", "export const door = 2;\n");
  const both = await Promise.all([run("cli"), run("cli")]);
  expect(both.map(({ status, stdout }) => [status, stdout])).toEqual([
    [0, "door 2\n"],
    [0, "door 2\n"],
  ]);
  expect(both.filter(({ stderr }) => stderr.includes("building server"))).toHaveLength(1);
});

it("a changed test builds nothing", async () => {
  put("schemas/index.test.ts", "export const other = 3;\n");
  expect((await run("cli")).stderr).toBe("");
});

it("a source that does not build is an error on standard error, and the command fails", async () => {
  put("schemas/index.ts", "export const door = ;\n");
  const broken = await run("cli");
  expect(broken).toMatchObject({ status: 1, stdout: "" });
  expect(broken.stderr).toContain("server could not be built");
  put("schemas/index.ts", "export const door = 2;\n");
});

it("a changed manifest is installed again", async () => {
  put(
    "schemas/package.json",
    `${readFileSync(join(planted.root, "schemas/package.json"), "utf8")}\n`,
  );
  await run("cli");
  expect(installs()).toHaveLength(2);
});

it("a signal reaches the server, which closes in its own way", async () => {
  const child = start(["start"]);
  const end = ended(child);
  await new Promise<void>((resolve) => {
    child.stdout?.on("data", (chunk) => String(chunk).includes("serving") && resolve());
  });
  child.kill("SIGTERM");
  expect(await end).toMatchObject({ status: 7, stdout: "serving\nclosing\n" });
});

it("an unknown command is a usage error", async () => {
  const unknown = await run("strat");
  expect(unknown).toMatchObject({ status: 2, stdout: "" });
  expect(unknown.stderr).toContain('start, cli, bench, test; not "strat"');
});
