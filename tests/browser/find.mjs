import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome"];
const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];

/** A browser without its libraries fails already in the loader, so its version proves it starts.
 * @param {string} file */
const starts = (file) =>
  process.platform === "win32"
    ? existsSync(file)
    : spawnSync(file, ["--version"], { stdio: "ignore", timeout: 20_000 }).status === 0;

function installed() {
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  const onPath = folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...onPath, ...PLACES].find((file) => existsSync(file) && starts(file));
}

/** Unpacks npm's build of Chromium (Linux on x64 only, needs no root) into `cache`.
 * @param {string} cache */
async function unpacked(cache) {
  if (process.platform !== "linux" || process.arch !== "x64") return undefined;
  mkdirSync(cache, { recursive: true });
  const before = process.env.TMPDIR;
  process.env.TMPDIR = cache; // the package unpacks wherever os.tmpdir() points
  try {
    const { default: chromium } = await import("@sparticuz/chromium");
    const file = await chromium.executablePath();
    return starts(file) ? file : undefined;
  } catch {
    return undefined;
  } finally {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
  }
}

function fromApt() {
  if (process.platform !== "linux" || process.getuid?.() !== 0) return undefined;
  const options = { stdio: /** @type {["ignore", 2, 2]} */ (["ignore", 2, 2]) };
  spawnSync("apt-get", ["update", "-q"], options);
  spawnSync("apt-get", ["install", "-y", "-q", "--no-install-recommends", "chromium"], options);
  return installed();
}

/** The path of a Chromium that starts: `$CHROMIUM`, the system's, npm's, Debian's; in that order.
 * @param {{ cache: string, log?: (line: string) => void }} options
 * @returns {Promise<string | undefined>} */
export async function findBrowser({ cache, log = () => {} }) {
  const named = process.env.CHROMIUM;
  if (named) {
    if (starts(named)) return named;
    throw new Error(`CHROMIUM names ${named}, which does not start`);
  }
  const system = installed();
  if (system) return system;
  log("no Chrome or Chromium installed: unpacking the one from npm");
  const fromNpm = await unpacked(cache);
  if (fromNpm) return fromNpm;
  log("the one from npm does not start here: trying Debian's");
  return fromApt();
}
