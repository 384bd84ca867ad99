import fc from "fast-check";
import { expect, it } from "vitest";
import { lintChecklist } from "../checklist/lint-checklist.ts";
import { createFormulaEngine } from "../formulas/index.ts";
import { SHAPE_CODES } from "../shared/codes/checklist-codes.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { parseChecklist } from "./index.ts";

const problems = (value: unknown) => {
  const result = parseChecklist(value);
  return result.ok ? [] : result.problems;
};
const nested = (levels: number): unknown => (levels === 0 ? 1 : [nested(levels - 1)]);
const circle: Record<string, unknown> = {};
circle.$defs = circle;

it("a draft without $defs is a checklist", () => {
  expect(problems(EXTENSION_LEAD)).toEqual([]);
  expect(problems(EVERY_KIND)).toEqual([]);
});

it.each([
  [{ ...EXTENSION_LEAD, tittle: "x" }, "/tittle", "unknown-keyword", { nearest: "title" }],
  [{ ...EXTENSION_LEAD, title: undefined }, "/title", "not-json", {}],
  [{ ...EXTENSION_LEAD, title: "" }, "/title", "blank", {}],
  [{ ...EXTENSION_LEAD, title: "half \ud83d" }, "/title", "bad-text", {}],
  [{ ...EXTENSION_LEAD, title: "cut\0here" }, "/title", "bad-text", {}],
  [{ ...EXTENSION_LEAD, values: { "a\udc00": 1 } }, "/values", "bad-text", {}],
  [
    { ...EXTENSION_LEAD, $defs: { deep: nested(40) } },
    `/$defs/deep${"/0".repeat(31)}`,
    "document-too-deep",
    { limit: 32 },
  ],
  [
    { ...EXTENSION_LEAD, description: "x".repeat(1_000_001) },
    "",
    "document-too-big",
    { limit: 1_000_000 },
  ],
  [circle, `/$defs${"/$defs".repeat(32)}`, "document-too-deep", {}],
  [
    { ...EXTENSION_LEAD, values: { Joints: { const: 1 } } },
    "/values/Joints",
    "bad-name",
    { name: "Joints" },
  ],
  [JSON.parse('{"values":{"__proto__":{"const":1}}}'), "/values/__proto__", "bad-name", {}],
  [
    { ...EXTENSION_LEAD, values: { a: {} } },
    "/values/a",
    "exactly-one-of",
    { keywords: ["const", "formula", "table"] },
  ],
  [
    { ...EXTENSION_LEAD, groups: [{ id: "A b", title: "t", points: [] }] },
    "/groups/0/id",
    "bad-name",
    { name: "A b" },
  ],
  [null, "", "wrong-type", { expected: ["object"] }],
])("case %# is refused at its place", (value, pointer, code, params) => {
  expect(problems(value)).toContainEqual(
    expect.objectContaining({ pointer, code, params: expect.objectContaining(params) }),
  );
});

/** Documents one or two edits away from a sound one: most pass the outer shape. */
const edited = fc
  .tuple(
    fc.constantFrom(EXTENSION_LEAD, EVERY_KIND),
    fc.array(fc.tuple(fc.array(fc.nat(30), { maxLength: 6 }), fc.jsonValue()), {
      minLength: 1,
      maxLength: 2,
    }),
  )
  .map(([base, edits]) => {
    const copy = JSON.parse(JSON.stringify(base));
    for (const [path, value] of edits) {
      let part = copy;
      for (const [level, step] of path.entries()) {
        const keys = typeof part === "object" && part !== null ? Object.keys(part) : [];
        const key = keys[step % Math.max(keys.length, 1)];
        if (key === undefined) break;
        if (level === path.length - 1) part[key] = value;
        else part = part[key];
      }
    }
    return copy;
  });

it("any value is a checklist or has problems with pointers into it; nothing throws", () => {
  const engine = createFormulaEngine();
  let accepted = 0;
  fc.assert(
    fc.property(
      fc.oneof({ weight: 4, arbitrary: edited }, fc.jsonValue(), fc.anything()),
      (value) => {
        const result = parseChecklist(value);
        if (result.ok) {
          accepted += 1;
          for (const { pointer } of lintChecklist(result.value, engine))
            expect(pointer).toMatch(/^\//);
          return;
        }
        expect(result.problems.length).toBeGreaterThan(0);
        for (const { pointer, code } of result.problems) {
          expect(pointer).toMatch(/^(\/|$)/);
          expect(SHAPE_CODES).toHaveProperty(code);
        }
      },
    ),
    { numRuns: 3000 },
  );
  expect(accepted).toBeGreaterThan(0);
});
