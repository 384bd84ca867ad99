import { createRequire } from "node:module";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { PACKAGES, type Planted, plant, REPO } from "./planted.ts";

const importOf = (what: string) => `import { door } from "${what}";\nexport const used = door;\n`;
const importType = (what: string) =>
  `import type { Door } from "${what}";\nexport type Used = Door;\n`;
const leaf = "export const door = 1;\nexport type Door = number;\n";

// rule, the file that breaks it, what that file imports
const VIOLATIONS: [string, string, string][] = [
  ["arrow-schemas", "schemas/judge/up.ts", "../../server/app.ts"],
  ["arrow-server", "server/usecases/across.ts", "../../runner/form/index.ts"],
  ["arrow-runner", "runner/pages/across.ts", "../../server/app.ts"],
  ["arrow-designer", "designer/pages/across.ts", "../../server/app.ts"],
  ["one-door-schemas", "server/usecases/window.ts", "../../schemas/judge/leaf.ts"],
  ["one-door-server", "runner/pages/window.ts", "../../server/store/leaf.ts"],
  ["one-door-runner", "designer/editor/window.ts", "../../runner/pages/leaf.ts"],
  ["one-door-runner", "designer/editor/side.test.ts", "../../runner/form/leaf.ts"],
  ["one-door-designer", "runner/pages/back.ts", "../../designer/model/leaf.ts"],
  ["form-stands-alone", "runner/form/field.ts", "../pages/leaf.ts"],
  ["form-stands-alone", "runner/form/store.ts", "idb"],
  ["model-knows-no-screen", "designer/model/screen.ts", "../editor/leaf.ts"],
  ["model-knows-no-screen", "designer/model/hook.ts", "react"],
  ["usecases-know-no-http", "server/usecases/route.ts", "../http/leaf.ts"],
  ["store-knows-no-layer-above", "server/store/verb.ts", "../usecases/leaf.ts"],
  ["store-knows-no-layer-above", "server/store/route.ts", "../http/leaf.ts"],
  ["http-goes-through-usecases", "server/http/rows.ts", "../store/leaf.ts"],
  ["nothing-imports-the-top", "server/usecases/top.ts", "../app.ts"],
  ["schemas-no-node", "schemas/judge/files.ts", "node:fs"],
  ["schemas-no-node", "schemas/judge/bare.ts", "path"],
  ["schemas-few-packages", "schemas/judge/regex.ts", "re2js"],
  ["no-test-from-code", "server/usecases/helped.ts", "./leaf.test.ts"],
  ["no-dev-dependency-in-code", "runner/pages/fake.ts", "fake-indexeddb"],
  ["no-cycles", "schemas/due/one.ts", "./two.ts"],
  ["not-to-unresolvable", "server/usecases/typo.ts", "./laef.ts"],
  ["not-to-unresolvable", "server/usecases/undeclared.ts", "react"],
];

const ALLOWED: Record<string, string> = {
  "schemas/judge/leaf.ts": importOf("ajv"),
  "schemas/judge/leaf.test.ts": importOf("fast-check"),
  "schemas/due/two.ts": "export const door = 2;\n",
  "server/http/fine.ts": importOf("../usecases/fine.ts"),
  "server/http/types.ts": importType("../store/leaf.ts"),
  "server/usecases/fine.ts": importOf("../store/leaf.ts"),
  "server/app.ts": importOf("./http/fine.ts"),
  "server/store/fine.ts": importOf("@roundbook/schemas"),
  "runner/pages/fine.tsx": importOf("@roundbook/schemas"),
  "designer/pages/fine.tsx": importOf("@roundbook/runner/form"),
  "tests/conformance/fine.test.ts": importOf("../../server/store/leaf.ts"),
};

const LEAVES = [
  "server/store/leaf.ts",
  "server/usecases/leaf.ts",
  "server/usecases/leaf.test.ts",
  "server/http/leaf.ts",
  "runner/pages/leaf.ts",
  "runner/form/leaf.ts",
  "designer/model/leaf.ts",
  "designer/editor/leaf.ts",
];

let planted: Planted;
let found: { rule: { name: string }; from: string }[];

beforeAll(() => {
  planted = plant({
    ...Object.fromEntries(LEAVES.map((path) => [path, leaf])),
    ...ALLOWED,
    ...Object.fromEntries(VIOLATIONS.map(([, from, to]) => [from, importOf(to)])),
    // Closes the circle by a type alone: that is a cycle too.
    "schemas/due/two.ts": `${importType("./one.ts")}export const door = 2;\n`,
  });
  const { output } = planted.run("dependency-cruiser/bin/dependency-cruise.mjs", [
    "--config",
    ".dependency-cruiser.cjs",
    "--output-type",
    "json",
    ...PACKAGES,
  ]);
  found = JSON.parse(output).summary.violations;
});

afterAll(() => planted.remove());

it.each(VIOLATIONS)("%s is broken by %s importing %s", (rule, from) => {
  const names = found.filter((violation) => violation.from === from).map(({ rule }) => rule.name);
  expect(names).toContain(rule);
});

it.each(Object.keys(ALLOWED).filter((path) => path !== "schemas/due/two.ts"))(
  "%s breaks no rule",
  (path) => {
    expect(found.filter(({ from }) => from === path)).toEqual([]);
  },
);

it("every rule of the configuration is proven by a planted violation", () => {
  const config = createRequire(import.meta.url)(join(REPO, ".dependency-cruiser.cjs"));
  const rules = config.forbidden.map(({ name }: { name: string }) => name);
  expect(new Set(VIOLATIONS.map(([rule]) => rule))).toEqual(new Set(rules));
});
