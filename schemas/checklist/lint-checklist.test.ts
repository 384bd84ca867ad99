import { expect, it } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { LINT_CODES } from "../shared/codes/lint-codes.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { rule } from "../testing/rule.ts";
import { parseChecklist } from "../validate/index.ts";
import { issueDocument } from "./issue-document.ts";
import { lintChecklist } from "./lint-checklist.ts";

const engine = createFormulaEngine();
const JSON_OF = { lead: EXTENSION_LEAD, every: EVERY_KIND };

/** A copy of a checklist with one place set (or removed, by undefined), as its JSON would be. */
const changed = (base: keyof typeof JSON_OF, pointer: string, value: unknown): unknown => {
  const copy = JSON.parse(JSON.stringify(JSON_OF[base]));
  const path = pointer.split("/").slice(1);
  const last = path.pop() ?? "";
  let part = copy;
  for (const token of path) part = part[token];
  if (value === undefined) delete part[last];
  else part[last] = value;
  return copy;
};

const lint = (base: keyof typeof JSON_OF, pointer: string, value: unknown) => {
  const parsed = parseChecklist(changed(base, pointer, value));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return lintChecklist(parsed.value, engine).map((found) => `${found.pointer} ${found.code}`);
};

it.each([EXTENSION_LEAD, EVERY_KIND])("a sound checklist has no lint problem: $title", (doc) => {
  expect(lintChecklist(doc, engine)).toEqual([]);
  expect(lintChecklist(doc)).toEqual([]);
});

const point = "/properties/earth_continuity";
const max = `${point}/limits/0/max`;
const rules = "/values/r_per_m/table/rules";
const table = "/values/r_per_m/table";
const reading = (limits: unknown) => ({
  title: "Gap",
  $ref: "#/$defs/reading",
  quantity: { unit: "mm" },
  limits,
});

it.each([
  ["lead", max, "joints + asset.lenght * r_per_m", `${max} unknown-name`],
  ["lead", max, "joints + asset.length", `${max} unit-mismatch`],
  ["lead", max, "asset.length", `${max} unit-mismatch`],
  ["lead", max, "asset.class == 'I'", `${max} type-mismatch`],
  ["lead", max, "answers.earth_continuity", `${max} bound-of-itself`],
  ["lead", max, "joints + answers.earth_continuity * 2.0", `${max} bound-of-itself`],
  ["lead", max, "joints +", `${max} formula-syntax`],
  ["lead", max, "has(asset.length)", `${max} formula-not-allowed`],
  ["lead", max, `1${"+1".repeat(120)}`, `${max} formula-too-complex`],
  ["lead", `${point}/ask/when`, "asset.class == 'i'", `${point}/ask/when not-an-option`],
  ["lead", `${point}/ask/when`, "asset.length", `${point}/ask/when type-mismatch`],
  ["lead", `${point}/ask/when`, "answers.earth_continuity > 1.0", `${point}/ask/when asks-itself`],
  ["lead", `${point}/limits/0/basis`, undefined, `${point}/limits/0 limit-without-basis`],
  ["lead", `${point}/limits`, undefined, `${point} reading-without-limit`],
  ["lead", `${point}/quantity/plausible`, undefined, `${point} reading-open-below`],
  ["lead", `${point}/quantity`, undefined, `${point} quantity-missing`],
  ["lead", `${point}/quantity/alsoIn`, ["m"], `${point}/quantity/alsoIn/0 unit-other-dimension`],
  ["lead", `${point}/quantity/alsoIn`, ["mohm"], `${point}/quantity/alsoIn/0 unit-unknown`],
  ["lead", "/particulars/length/minimum", 200, "/particulars/length range-empty"],
  [
    "lead",
    "/particulars/class/enum",
    ["I", "II", 3],
    "/particulars/class/enum/2 enum-type-mismatch",
  ],
  ["lead", "/particulars/function", { title: "Use" }, "/particulars/function reserved-name"],
  ["lead", "/values/min", { const: 1 }, "/values/min reserved-name"],
  ["lead", "/values/joints", { unit: "Ohm", formula: "joints * 2" }, "/values/joints value-cycle"],
  ["lead", `${rules}/0/when`, [0.75, 1], `${rules}/0/when table-columns`],
  ["lead", `${rules}/0/when`, ["I"], `${rules}/0/when/0 table-cell-type`],
  ["lead", `${rules}/0/then`, "a", `${rules} table-mixed-outcomes`],
  ["lead", `${rules}/0/when`, [1], `${table} table-overlap`],
  ["lead", `${rules}/0`, rule([4], 1), `${table} table-hole`],
  ["lead", `${table}/policy`, "first", `${rules} table-without-final-rule`],
  ["every", "/properties", {}, "/properties nothing-to-ask"],
  ["every", "/properties/lock/oneOf", undefined, "/properties/lock choice-without-options"],
  ["every", "/properties/lock/oneOf/1/const", "yes", "/properties/lock/oneOf/1 duplicate-option"],
  ["every", "/properties/finish/maximum", undefined, "/properties/finish graded-without-range"],
  ["every", "/properties/intact/minimum", 1, "/properties/intact/minimum keyword-wrong-kind"],
  ["every", "/properties/gap", reading([{ basis: "b" }]), "/properties/gap/limits/0 limit-empty"],
  [
    "every",
    "/properties/gap",
    reading([{ accept: ["ok"], basis: "b" }]),
    "/properties/gap/limits/0/accept limit-kind",
  ],
  [
    "every",
    "/properties/gap",
    reading([{ min: 4, max: 2, basis: "b" }]),
    "/properties/gap/limits/0 limit-contradictory",
  ],
  [
    "every",
    "/properties/gap",
    reading([{ min: 4, exclusiveMax: 4, basis: "b" }]),
    "/properties/gap/limits/0 limit-contradictory",
  ],
  [
    "every",
    "/properties/gap",
    reading([
      { min: 4, basis: "b" },
      { max: 2, basis: "b" },
    ]),
    "/properties/gap/limits/1 limit-contradictory",
  ],
  ["every", "/properties/intact/limits/0/max", 4, "/properties/intact/limits/0/max limit-kind"],
  [
    "every",
    "/properties/intact/limits/0/accept",
    ["yes"],
    "/properties/intact/limits/0/accept/0 limit-accepts-unknown",
  ],
  ["every", "/groups/0/points", ["intact", "finnish"], "/groups/0/points/1 group-unknown-point"],
  [
    "every",
    "/groups/1",
    { id: "b", title: "B", points: ["intact"] },
    "/groups/1/points/0 point-in-two-groups",
  ],
  ["every", "/groups/1", { id: "looking", title: "B", points: [] }, "/groups/1/id duplicate-group"],
  ["every", "/scores/condition/of", ["finnish"], "/scores/condition/of/0 score-unknown-point"],
  ["every", "/scores/condition/of", ["intact"], "/scores/condition/of/0 score-point-not-graded"],
  [
    "every",
    "/scores/condition/bands/1/from",
    70,
    "/scores/condition/bands/1/from bands-not-descending",
  ],
  ["every", "/scores/condition/bands/1/from", 30, "/scores/condition/bands/1/from bands-gap"],
] as const)("lint of %s with %s = %j tells %s", (base, pointer, value, expected) => {
  expect(lint(base, pointer, value)).toContain(expected);
});

it.each([
  ["lead", "/title"],
  ["lead", `${point}/title`],
  ["every", "/groups/0/title"],
] as const)("blanks are no text: %s %s", (base, pointer) => {
  const parsed = parseChecklist(changed(base, pointer, " \u00a0"));
  expect(parsed.ok ? [] : parsed.problems).toEqual([{ pointer, code: "blank", params: {} }]);
});

it("an option whose title is blanks is none", () => {
  const found = parseChecklist(changed("every", "/properties/lock/oneOf/0/title", "  "));
  expect(found).toMatchObject({ problems: [{ pointer: "/properties/lock/oneOf/0" }] });
});

it("every problem lint tells is in the list of codes with its parameters", () => {
  const found = [
    ...lintChecklist(
      changed("lead", max, "joints + asset.lenght") as typeof EXTENSION_LEAD,
      engine,
    ),
    ...lintChecklist(changed("lead", `${rules}/0/when`, [1]) as typeof EXTENSION_LEAD, engine),
  ];
  expect(found.length).toBeGreaterThan(1);
  for (const { code, params } of found) {
    expect(Object.keys(params).sort()).toEqual([...(LINT_CODES[code]?.params ?? [])].sort());
  }
});

it("issuing embeds exactly the answer types in use and is idempotent", () => {
  const issued = issueDocument(EXTENSION_LEAD);
  expect(Object.keys(issued.$defs ?? {}).sort()).toEqual([
    "absent",
    "check",
    "reading",
    "writtenText",
  ]);
  expect(issueDocument(issued)).toEqual(issued);
  expect(parseChecklist(issued).ok).toBe(true);
});
