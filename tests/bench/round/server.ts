import { spawn } from "node:child_process";
import { join } from "node:path";

export interface Running {
  readonly origin: string;
  stop(): Promise<void>;
}

/** The built server over a data folder, on a port of its own. */
export async function startServer(root: string, folder: string): Promise<Running> {
  const child = spawn(process.execPath, [join(root, "server/dist/main.mjs")], {
    env: { ...process.env, PORT: "0", HOST: "127.0.0.1", ROUNDBOOK_DATA: folder },
    stdio: ["ignore", "pipe", "inherit"],
  });
  const ended = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  const line = await Promise.race([
    new Promise<string>((resolve) =>
      child.stdout.once("data", (chunk) => resolve(String(chunk).trim())),
    ),
    ended.then(() => Promise.reject(new Error("the server ended before it listened"))),
  ]);
  return {
    origin: new URL(line).origin,
    stop: async () => {
      child.kill("SIGTERM");
      await ended;
    },
  };
}
