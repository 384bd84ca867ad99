import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { extname, join } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".webp": "image/webp",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
};
const SQUEEZED = new Set([".html", ".js", ".mjs", ".css", ".json", ".webmanifest", ".svg", ".txt"]);

/** The build names these files after their content. */
const HASHED = /^assets\/.*-[A-Za-z0-9_-]{8,}\.[a-z0-9]+$/;

const squeezeBrotli = (bytes: Buffer) =>
  promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } });
const squeezeGzip = (bytes: Buffer) => promisify(gzip)(bytes, { level: 9 });

export interface StaticFile {
  readonly type: string;
  readonly etag: string;
  readonly cache: string;
  readonly plain: Buffer;
  /** Compressed at first use and kept; undefined where compressing gains nothing. */
  squeezed(encoding: "br" | "gzip"): Promise<Buffer> | undefined;
}

function load(path: string, name: string): StaticFile {
  const plain = readFileSync(path);
  const extension = extname(name);
  const kept = new Map<"br" | "gzip", Promise<Buffer>>();
  return {
    type: TYPES[extension] ?? "application/octet-stream",
    etag: `"${createHash("sha256").update(plain).digest("base64url").slice(0, 27)}"`,
    cache: HASHED.test(name) ? "public, max-age=31536000, immutable" : "no-cache",
    plain,
    squeezed(encoding) {
      if (!SQUEEZED.has(extension)) return undefined;
      const work = kept.get(encoding) ?? (encoding === "br" ? squeezeBrotli : squeezeGzip)(plain);
      kept.set(encoding, work);
      return work;
    },
  };
}

/**
 * The files of one built app, read once: nothing a visitor asks for ever becomes a path on disk.
 * Empty when the app is not built.
 */
export function readStaticFolder(folder: string): ReadonlyMap<string, StaticFile> {
  const files = new Map<string, StaticFile>();
  if (!existsSync(folder)) return files;
  for (const name of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    const path = join(folder, name);
    const slashed = name.replaceAll("\\", "/");
    if (statSync(path).isFile() && !slashed.endsWith(".map"))
      files.set(slashed, load(path, slashed));
  }
  return files;
}
