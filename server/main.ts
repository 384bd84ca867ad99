import { existsSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { serve } from "@hono/node-server";
import { createApp } from "./app.ts";
import { createFolderBlobs } from "./blobs/folder-blobs.ts";
import { smtpTransport } from "./mail/transport.ts";
import { createNewId } from "./new-id.ts";
import { openStore } from "./store/open-store.ts";
import { isEmptyEstate } from "./usecases/begin-estate.ts";
import { createContext } from "./usecases/context.ts";
import { renewHolidays } from "./usecases/holidays.ts";
import { mailInBackground } from "./usecases/mail-digests.ts";
import { recomputeInBackground } from "./usecases/recompute.ts";
import { createSetupToken } from "./usecases/setup-token.ts";
import { clearUploads } from "./usecases/uploads.ts";
import { warmUp } from "./usecases/warm-up.ts";

const port = Number(process.env.PORT ?? 8420);
const host = process.env.HOST ?? "127.0.0.1";
const data = resolve(process.env.ROUNDBOOK_DATA ?? "data");

/** The repository, whether this file runs as source or built into `server/dist`. */
function root(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "pnpm-workspace.yaml")) && dirname(folder) !== folder)
    folder = dirname(folder);
  return folder;
}

function report(error: unknown, during: string): void {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  const line = { at: new Date().toISOString(), level: "error", during, error: text };
  process.stderr.write(`${JSON.stringify(line)}\n`);
}

async function start(): Promise<void> {
  await mkdir(data, { recursive: true });
  const clock = () => Date.now();
  const newId = createNewId(clock);
  const store = await openStore({ url: pathToFileURL(join(data, "roundbook.db")).href });
  const uploads = join(data, "uploads");
  await clearUploads(uploads);
  const setupToken = createSetupToken(await isEmptyEstate(createContext({ store, clock, newId })));
  const app = createApp({
    store,
    blobs: createFolderBlobs(join(data, "evidence"), newId),
    clock,
    newId,
    report,
    setupToken,
    canMail:
      process.env.ROUNDBOOK_SMTP !== undefined && process.env.ROUNDBOOK_MAIL_FROM !== undefined,
    uploads,
    apps: { runner: join(root(), "runner/dist"), designer: join(root(), "designer/dist") },
  });

  await renewHolidays(createContext({ store, clock, newId }));
  const smtp = process.env.ROUNDBOOK_SMTP;
  const from = process.env.ROUNDBOOK_MAIL_FROM;
  const mailing =
    smtp === undefined || from === undefined
      ? undefined
      : mailInBackground(
          createContext({ store, clock, newId, report: (error) => report(error, "the digest") }),
          smtpTransport(smtp, from),
          process.env.ROUNDBOOK_ORIGIN,
        );
  const background = recomputeInBackground(
    createContext({ store, clock, newId, report: (error) => report(error, "working out dates") }),
  );

  const server = serve({ fetch: app.fetch, port, hostname: host }, (address) => {
    const at = `http://${host.includes(":") ? `[${host}]` : host}:${address.port}/`;
    const begin = setupToken.text === null ? "" : `?begin=${setupToken.text}`;
    process.stdout.write(`${at}${begin}\n`);
    void warmUp();
  });
  server.on("error", (error) => {
    process.stderr.write(`The server cannot listen on ${host}:${port}: ${error.message}\n`);
    process.exitCode = 1;
    void store.close();
  });

  let stopping = false;
  const stop = () => {
    if (stopping) return;
    stopping = true;
    // Requests under way finish and what they write is committed before the store closes.
    server.close(
      () => void Promise.all([background.stop(), mailing?.stop()]).then(() => store.close()),
    );
    if ("closeIdleConnections" in server) server.closeIdleConnections();
    setTimeout(
      () => "closeAllConnections" in server && server.closeAllConnections(),
      5_000,
    ).unref();
  };
  process.on("SIGTERM", stop);
  process.on("SIGINT", stop);
}

if (Number.isInteger(port) && port >= 0 && port < 65_536) await start();
else {
  process.stderr.write(`PORT is a whole number up to 65535, not "${process.env.PORT}"\n`);
  process.exitCode = 2;
}
