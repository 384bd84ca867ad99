import { build, type Plugin, type ResolvedConfig } from "vite";

/** What `sw.ts` finds under `__PRECACHE__`: every built file's URL, and a hash that changes with any. */
export interface Precache {
  revision: string;
  urls: string[];
}

const hex = (bytes: ArrayBuffer) =>
  [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");

async function revisionOf(parts: string[]): Promise<string> {
  const bytes = new TextEncoder().encode(parts.join("\n"));
  return hex(await crypto.subtle.digest("SHA-256", bytes)).slice(0, 16);
}

/** Builds `sw.ts` beside the app as one classic script at `/sw.js`, once the app's files are known. */
export function serviceWorker(): Plugin {
  let config: ResolvedConfig;
  return {
    name: "roundbook-service-worker",
    apply: "build",
    configResolved(resolved) {
      config = resolved;
    },
    async writeBundle(_options, bundle) {
      const files = Object.values(bundle).filter((file) => !/^\.vite\/|\.map$/.test(file.fileName));
      // Hashed names tell their content; the pages among them have fixed names.
      const pages = files.flatMap((file) =>
        file.type === "asset" && file.fileName.endsWith(".html") ? [String(file.source)] : [],
      );
      const urls = files.map((file) => config.base + file.fileName).sort();
      const precache: Precache = { revision: await revisionOf([...urls, ...pages]), urls };
      await build({
        configFile: false,
        root: config.root,
        logLevel: "warn",
        publicDir: false,
        define: { __PRECACHE__: JSON.stringify(precache) },
        build: {
          emptyOutDir: false,
          outDir: config.build.outDir,
          target: "es2022",
          lib: { entry: "sw.ts", formats: ["iife"], name: "sw", fileName: () => "sw.js" },
        },
      });
    },
  };
}
