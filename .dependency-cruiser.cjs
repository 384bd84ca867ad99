const { readFileSync } = require("node:fs");
const { join } = require("node:path");

const TEST = "\\.test\\.tsx?$|/(testing|fuzz)/";
const CONFIG = "(^|/)(vite[^/]*|vitest\\.config|drizzle\\.config)\\.ts$";

const forbid = (name, comment, from, to) => ({ name, comment, severity: "error", from, to });

/** A package's doors are its exports; nobody but `tests` reaches behind them. */
function oneDoor(name) {
  const { exports: doors } = JSON.parse(
    readFileSync(join(__dirname, name, "package.json"), "utf8"),
  );
  const files = Object.values(doors).map(
    (file) => `^${name}/${file.slice(2).replace(/\./g, "\\.")}$`,
  );
  return forbid(
    `one-door-${name}`,
    `${name} is entered through the exports of its package.json`,
    { pathNot: `^(${name}|tests)/` },
    { path: `^${name}/`, pathNot: files },
  );
}

/** Which packages may stand on the right of which arrow. */
const arrow = (name, others) =>
  forbid(
    `arrow-${name}`,
    "schemas ← server; schemas ← runner ← designer; tests see all",
    { path: `^${name}/` },
    { path: `^(${others})/` },
  );

module.exports = {
  forbidden: [
    arrow("schemas", "server|runner|designer|tests"),
    arrow("server", "runner|designer|tests"),
    arrow("runner", "server|designer|tests"),
    arrow("designer", "server|tests"),
    ...["schemas", "server", "runner", "designer"].map(oneDoor),
    forbid(
      "form-stands-alone",
      "runner/form takes a checklist and gives answers: it knows no page, store or network",
      { path: "^runner/form/", pathNot: TEST },
      { path: "^runner/(?!form/)|node_modules/(idb|@tanstack/react-query)/" },
    ),
    forbid(
      "model-knows-no-screen",
      "designer/model is pure",
      { path: "^designer/model/", pathNot: TEST },
      { path: "^designer/(editor|pages)/|node_modules/react(-dom)?/" },
    ),
    forbid(
      "usecases-know-no-http",
      "http → usecases → store",
      { path: "^server/usecases/" },
      { path: "^server/http/" },
    ),
    forbid(
      "store-knows-no-layer-above",
      "http → usecases → store",
      { path: "^server/store/" },
      { path: "^server/(http|usecases)/" },
    ),
    forbid(
      "http-goes-through-usecases",
      "a route calls a use-case; only types of the store may be named in http",
      { path: "^server/http/", pathNot: TEST },
      { path: "^server/store/", dependencyTypesNot: ["type-only"] },
    ),
    forbid(
      "nothing-imports-the-top",
      "app, main and cli stand above the layers",
      { path: "^server/(http|usecases|store)/", pathNot: TEST },
      { path: "^server/(app|main|cli)\\.ts$" },
    ),
    forbid(
      "schemas-no-node",
      "schemas does no I/O and runs in browsers",
      { path: "^schemas/", pathNot: TEST },
      { dependencyTypes: ["core"] },
    ),
    forbid(
      "schemas-few-packages",
      "schemas stands on Ajv, the formula and pattern engines and their types only",
      { path: "^schemas/", pathNot: `${TEST}|^schemas/patterns/index\\.ts$` },
      {
        path: "node_modules/",
        pathNot:
          "node_modules/(@marcbachmann/cel-js|ajv|ajv-formats|json-schema-to-ts|@types/[^/]+)/",
      },
    ),
    forbid(
      "no-test-from-code",
      "shipped code imports no test",
      { pathNot: [TEST, "^tests/"] },
      { path: [TEST, "^tests/"] },
    ),
    forbid(
      "no-dev-dependency-in-code",
      "what ships is a dependency",
      { path: "^(schemas|server|runner|designer)/", pathNot: [TEST, CONFIG] },
      { dependencyTypes: ["npm-dev"], dependencyTypesNot: ["type-only"], pathNot: "/@types/" },
    ),
    forbid("no-cycles", "a cycle has no bottom", {}, { circular: true }),
    forbid("not-to-unresolvable", "a mistyped path is an error", {}, { couldNotResolve: true }),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)(dist|data|\\.cache)/" },
    // Type-only imports are dependencies too: an arrow is an arrow.
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "default", "types"],
      extensions: [".ts", ".tsx", ".mjs", ".js", ".d.ts", ".json", ".css"],
      mainFields: ["module", "main", "types"],
    },
  },
};
