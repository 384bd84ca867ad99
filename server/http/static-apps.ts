import type { Context } from "hono";
import { Refusal } from "../usecases/refusal.ts";
import { encodingFor } from "./squeeze.ts";
import { readStaticFolder, type StaticFile } from "./static-files.ts";

/** Folders of the built apps; a missing folder is an app that is not built. */
export interface AppFolders {
  readonly runner: string;
  readonly designer: string;
}

async function send(c: Context, file: StaticFile): Promise<Response> {
  const headers: Record<string, string> = {
    "content-type": file.type,
    "cache-control": file.cache,
    etag: file.etag,
    vary: "accept-encoding",
  };
  if (c.req.header("if-none-match") === file.etag)
    return new Response(null, { status: 304, headers });
  const encoding = encodingFor(c.req.header("accept-encoding"));
  const squeezed = encoding ? await file.squeezed(encoding) : undefined;
  if (encoding && squeezed) headers["content-encoding"] = encoding;
  const bytes = squeezed ?? file.plain;
  headers["content-length"] = String(bytes.byteLength);
  return new Response(c.req.method === "HEAD" ? null : new Uint8Array(bytes), { headers });
}

/**
 * The runner at `/`, the designer at `/designer/`. A path without a file extension is a page of
 * the app and gets its index; a missing script or picture is honestly not found.
 */
export function staticApps(folders: AppFolders): (c: Context) => Promise<Response> {
  const runner = readStaticFolder(folders.runner);
  const designer = readStaticFolder(folders.designer);
  return async (c) => {
    const path = c.req.path;
    if (path === "/designer") return c.redirect("/designer/", 308);
    const inDesigner = path.startsWith("/designer/");
    const files = inDesigner ? designer : runner;
    const name = path.slice(inDesigner ? "/designer/".length : 1);
    const isPage = !/\.[a-z0-9]+$/i.test(name);
    const file = files.get(name) ?? (isPage ? files.get("index.html") : undefined);
    if (!file) throw new Refusal("not-found", "no-such-page");
    return send(c, file);
  };
}
