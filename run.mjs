// One command from a bare machine: installs, builds what changed, then serves, tests or measures.
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const ROOT = dirname(fileURLToPath(import.meta.url));
const CACHE = join(ROOT, ".cache");
const PNPM = "pnpm@12.4.2";
const PACKAGES = ["schemas", "server", "runner", "designer", "tests"];
const MANIFESTS = ["package.json", "pnpm-lock.yaml", "pnpm-workspace.yaml"].concat(
  PACKAGES.map((name) => `${name}/package.json`),
);

/** A part is built by vite with `args` when anything in the folders `from` changed. */
const PARTS = {
  server: {
    entry: "server/main.ts",
    out: "server/dist/main.mjs",
    from: ["schemas", "server"],
    args: ["--config", "vite.node.config.ts", "--mode", "server"],
  },
  runner: {
    entry: "runner/index.html",
    out: "runner/dist/index.html",
    from: ["schemas", "runner"],
    args: ["runner"],
  },
  designer: {
    entry: "designer/index.html",
    out: "designer/dist/index.html",
    from: ["schemas", "runner", "designer"],
    args: ["designer"],
  },
  bench: {
    entry: "tests/bench/main.ts",
    out: "tests/dist/bench.mjs",
    from: ["schemas", "server", "tests"],
    args: ["--config", "vite.node.config.ts", "--mode", "bench"],
  },
};

const say = (line) => process.stderr.write(`${line}\n`);
const tool = (path) => join(ROOT, "node_modules", path);
const VITE = tool("vite/bin/vite.js");

class Stop extends Error {}

function* sources(folder) {
  for (const entry of readdirSync(join(ROOT, folder), { withFileTypes: true })) {
    if (/^(node_modules|dist|\..*)$/.test(entry.name)) continue;
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* sources(path);
    else if (!/\.(test\.tsx?|md)$/.test(entry.name)) yield path;
  }
}

function hashOf(files, extra) {
  const hash = createHash("sha256").update(extra.join("\0"));
  for (const file of files) {
    if (existsSync(join(ROOT, file)))
      hash.update(`\0${file}\0`).update(readFileSync(join(ROOT, file)));
  }
  return hash.digest("hex");
}

const read = (file) => (existsSync(file) ? readFileSync(file, "utf8") : "");
const platform = () => [process.versions.node.split(".")[0], process.platform, process.arch, PNPM];

const INSTALLED = tool(".roundbook-installed");
const installKey = () => hashOf(MANIFESTS, platform());

const stampOf = (name) => join(CACHE, "built", name);
const buildKey = (name) => {
  const { from, args } = PARTS[name];
  const files = from.flatMap((folder) => [...sources(folder)]).sort();
  return hashOf([...files, "pnpm-lock.yaml", "tsconfig.json", "vite.node.config.ts"], args);
};
const isStale = (name) =>
  !existsSync(join(ROOT, PARTS[name].out)) || read(stampOf(name)) !== buildKey(name);

/** npm does not always pass a signal on, and leaves its child running when it is killed itself. */
function whenAbandoned(act) {
  if (!process.env.npm_lifecycle_event) return;
  const shell = process.ppid;
  // Between npm and this process stands a shell that outlives npm.
  const npm = Number(/\) \S+ (\d+)/.exec(read(`/proc/${shell}/stat`))?.[1] ?? 0);
  const watch = setInterval(() => {
    if (process.ppid === shell && (npm === 0 || isAlive(npm))) return;
    clearInterval(watch);
    act();
  }, 500);
  watch.unref();
}

function isAlive(pid) {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return error.code === "EPERM";
  }
}

const SIGNALS = ["SIGINT", "SIGTERM", "SIGHUP"];
const children = new Set();
let stopped = "";

function stop(signal) {
  stopped = signal;
  // A terminal sends an interrupt to the whole group by itself.
  if (signal === "SIGINT" && process.stdin.isTTY) return;
  for (const child of children) child.kill(signal === "SIGINT" ? signal : "SIGTERM");
}

/** Runs a child to its end and gives its exit status; signals reach it. */
function run(file, args, { stdio = "inherit", env = {}, shell = false } = {}) {
  return new Promise((resolve, reject) => {
    const options = { cwd: ROOT, stdio, shell, env: { ...process.env, ...env } };
    const child = spawn(file, args, options);
    if (children.add(child).size === 1) for (const signal of SIGNALS) process.on(signal, stop);
    const end = (settle, value) => {
      if (children.delete(child) && children.size === 0)
        for (const signal of SIGNALS) process.off(signal, stop);
      settle(value);
    };
    child.on("error", (error) => end(reject, error));
    child.on("close", (code) =>
      stopped ? end(reject, new Stop(`stopped by ${stopped}`)) : end(resolve, code ?? 1),
    );
  });
}
const QUIET = ["ignore", 2, 2];
const node = (args, options) => run(process.execPath, args, options);

/** Two commands in one pipe both find the same part stale: the second waits for the first. */
async function alone(work) {
  const lock = join(CACHE, "lock");
  mkdirSync(CACHE, { recursive: true });
  for (;;) {
    try {
      writeFileSync(lock, String(process.pid), { flag: "wx" });
      break;
    } catch (error) {
      if (error.code !== "EEXIST") throw error;
      if (isAlive(Number(read(lock)))) await new Promise((wake) => setTimeout(wake, 150));
      else rmSync(lock, { force: true });
    }
  }
  try {
    return await work();
  } finally {
    rmSync(lock, { force: true });
  }
}

async function install() {
  if (read(INSTALLED) === installKey()) return;
  say("installing dependencies…");
  const args = ["--yes", PNPM, "install", "--frozen-lockfile"];
  const windows = process.platform === "win32";
  const status = await run("npx", args, { stdio: QUIET, env: { CI: "true" }, shell: windows });
  if (status !== 0) throw new Stop("the dependencies could not be installed");
  writeFileSync(INSTALLED, installKey());
}

async function buildPart(name) {
  const key = buildKey(name);
  say(`building ${name}…`);
  rmSync(stampOf(name), { force: true });
  const args = [VITE, "build", "--logLevel", "warn", ...PARTS[name].args];
  if ((await node(args, { stdio: QUIET })) !== 0) throw new Stop(`${name} could not be built`);
  mkdirSync(dirname(stampOf(name)), { recursive: true });
  writeFileSync(stampOf(name), key);
}

/** Leaves the named parts built from the present sources; quiet and quick when they are. */
async function ready(names) {
  const present = names.filter((name) => existsSync(join(ROOT, PARTS[name].entry)));
  for (const name of names) {
    if (!present.includes(name)) say(`${name} is left out: ${PARTS[name].entry} does not exist`);
  }
  if (read(INSTALLED) === installKey() && !present.some(isStale)) return;
  await alone(async () => {
    await install();
    const results = await Promise.allSettled(present.filter(isStale).map(buildPart));
    for (const { reason } of results) if (reason) throw reason;
  });
}

/** Continues as a built program: same process, so its signals and exit status are ours. */
async function become(file, args) {
  const path = join(ROOT, file);
  if (!existsSync(path)) throw new Stop(`${file} was not built: its source does not exist`);
  whenAbandoned(() => process.kill(process.pid, "SIGTERM"));
  process.argv = [process.argv[0], path, ...args];
  await import(pathToFileURL(path).href);
}

const CHECKS = [
  ...PACKAGES.map((name) => [`types of ${name}`, ["typescript/bin/tsc", "--noEmit", "-p", name]]),
  ["lint", ["@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."]],
  [
    "arrows",
    ["dependency-cruiser/bin/dependency-cruise.mjs", "--config", ".dependency-cruiser.cjs"].concat(
      PACKAGES,
    ),
  ],
];

async function checks() {
  let failed = 0;
  for (const [title, [file, ...args]] of CHECKS) {
    const status = await node([tool(file), ...args]);
    say(`${status === 0 ? "passed" : "FAILED"}: ${title}`);
    if (status !== 0) failed += 1;
  }
  return { passed: CHECKS.length - failed, failed, skipped: 0 };
}

async function suites(filters) {
  const report = join(CACHE, "vitest.json");
  rmSync(report, { force: true });
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const args = [tool("vitest/vitest.mjs"), "run", ...reporters, ...filters];
  const status = await node(args, { env: { NODE_ENV: "test" } });
  const count = { passed: 0, failed: 0, skipped: 0 };
  if (existsSync(report)) {
    const result = JSON.parse(read(report));
    count.passed = result.numPassedTests;
    // A file that does not even load holds no test to count.
    const broken = result.testResults.filter(
      (file) =>
        file.status === "failed" && !file.assertionResults.some((t) => t.status === "failed"),
    );
    count.failed = result.numFailedTests + broken.length;
    count.skipped = result.numPendingTests + result.numTodoTests;
  }
  if (count.passed + count.failed === 0) say("no test ran");
  if (status !== 0 && count.failed === 0) count.failed = 1;
  return count;
}

async function test(filters) {
  whenAbandoned(() => stop("SIGTERM"));
  await ready(Object.keys(PARTS));
  const { findBrowser } = await import("./tests/browser/find.mjs");
  const browser = await findBrowser({ cache: join(CACHE, "browser"), log: say }).catch((error) => {
    throw new Stop(error.message);
  });
  if (browser) process.env.CHROMIUM = browser;
  else say("no browser could be found: the journeys will fail; set CHROMIUM to the path of one");
  const none = { passed: 0, failed: 0, skipped: 0 };
  const counts = [filters.length > 0 ? none : await checks(), await suites(filters)];
  const sum = (kind) => counts[0][kind] + counts[1][kind];
  const skipped = sum("skipped") > 0 ? `, ${sum("skipped")} skipped` : "";
  process.stdout.write(`\n${sum("passed")} passed, ${sum("failed")} failed${skipped}\n`);
  process.exitCode = counts[1].passed > 0 && sum("failed") === 0 ? 0 : 1;
}

const COMMANDS = {
  start: async (args) => {
    await ready(["server", "runner", "designer"]);
    await become("server/dist/main.mjs", args);
  },
  cli: async (args) => {
    await ready(["server"]);
    await become("server/dist/cli.mjs", args);
  },
  bench: async (args) => {
    await ready(Object.keys(PARTS));
    await become("tests/dist/bench.mjs", args);
  },
  test,
};

const [command, ...args] = process.argv.slice(2);
try {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < 20 || (major === 20 && minor < 19))
    throw new Stop(`Node ${process.versions.node} is too old: 20.19 or newer is needed`);
  const act = Object.hasOwn(COMMANDS, command ?? "") && COMMANDS[command];
  if (act) await act(args);
  else {
    say(`run.mjs knows: ${Object.keys(COMMANDS).join(", ")}; not "${command ?? ""}"`);
    process.exitCode = 2;
  }
} catch (error) {
  if (!(error instanceof Stop)) throw error;
  say(error.message);
  process.exitCode = 1;
}
