import { type ChildProcess, spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const SERVER = fileURLToPath(new URL("../../server/dist/main.mjs", import.meta.url));

export interface Book {
  /** The address the server printed: it begins an empty book. */
  readonly begin: string;
  readonly origin: string;
  readonly folder: string;
  /** Ends the server as a power cut would, and starts it again on the same data. */
  crash(): Promise<void>;
  restart(): Promise<void>;
  close(): Promise<void>;
}

const started = (folder: string, port: number): Promise<{ child: ChildProcess; line: string }> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [SERVER], {
      env: { ...process.env, PORT: String(port), HOST: "127.0.0.1", ROUNDBOOK_DATA: folder },
      stdio: ["ignore", "pipe", "pipe"],
    });
    let errors = "";
    child.stderr?.on("data", (chunk) => {
      errors += chunk;
    });
    child.once("exit", (code) => reject(new Error(`the server ended with ${code}: ${errors}`)));
    child.stdout?.once("data", (chunk) => resolve({ child, line: String(chunk).trim() }));
  });

const ended = (child: ChildProcess, signal: NodeJS.Signals): Promise<void> =>
  new Promise((resolve) => {
    child.removeAllListeners("exit");
    child.once("exit", () => resolve());
    child.kill(signal);
  });

/** The built server on a port and data of its own. */
export const openBook = async (): Promise<Book> => {
  const folder = await mkdtemp(join(tmpdir(), "roundbook-journey-"));
  let { child, line } = await started(folder, 0);
  const begin = line;
  const { origin, port } = new URL(line);
  return {
    begin,
    origin,
    folder,
    crash: () => ended(child, "SIGKILL"),
    restart: async () => {
      ({ child, line } = await started(folder, Number(port)));
    },
    close: async () => {
      if (child.exitCode === null && child.signalCode === null) await ended(child, "SIGTERM");
      await rm(folder, { recursive: true, force: true });
    },
  };
};
