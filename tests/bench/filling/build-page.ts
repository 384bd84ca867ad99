import { join } from "node:path";
import { compileSchemaValidatorsCode } from "@rjsf/validator-ajv8/compileSchemaValidators";
import { build, type Plugin } from "vite";
import type { PlainSchema } from "./points.ts";

export interface File {
  readonly type: string;
  readonly body: string | Uint8Array;
}

export interface BuiltPage {
  /** What the page's head asks for: scripts, style sheets, fonts of every page. */
  readonly head: string;
  readonly files: ReadonlyMap<string, File>;
}

const TYPES: Record<string, string> = {
  js: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
  woff2: "font/woff2",
};

/** The two faces that the app loads with its first screen. */
const FIRST_FACES = /(besley|hyperlegible-next)-latin-wght/;

const compiled = (schema: PlainSchema): Plugin => ({
  name: "compiled-validators",
  load(id) {
    if (!id.endsWith("/compiled-validators.ts")) return undefined;
    const code = compileSchemaValidatorsCode(
      schema as Parameters<typeof compileSchemaValidatorsCode>[0],
    );
    return `const exports = {};\n${code.replace(/^"use strict";/, "")}\nexport const validators = exports;`;
  },
});

/** A page of this folder as it would ship: minified, its style sheet apart, nothing inline. */
export async function buildPage(
  root: string,
  entry: string,
  base: string,
  schema?: PlainSchema,
): Promise<BuiltPage> {
  const folder = join(root, "tests/bench/filling");
  const made = await build({
    root: folder,
    base,
    configFile: false,
    logLevel: "error",
    plugins: schema ? [compiled(schema)] : [],
    build: {
      write: false,
      target: "es2022",
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: { input: join(folder, entry) },
    },
  });
  const [output] = Array.isArray(made) ? made : [made];
  if (!output || !("output" in output)) throw new Error("nothing was built");
  const files = new Map<string, File>();
  let head = "";
  for (const one of output.output) {
    const path = `${base}${one.fileName}`;
    const type = TYPES[one.fileName.split(".").at(-1) ?? ""] ?? "application/octet-stream";
    files.set(path, { type, body: one.type === "chunk" ? one.code : one.source });
    if (one.type === "chunk" && one.isEntry && one.code.trim() !== "")
      head += `<script type="module" src="${path}"></script>`;
    else if (path.endsWith(".css")) head += `<link rel="stylesheet" href="${path}">`;
    else if (FIRST_FACES.test(path))
      head += `<link rel="preload" as="font" type="font/woff2" crossorigin href="${path}">`;
  }
  return { head, files };
}
