import {
  registerSchema,
  unregisterSchema,
  type Validator,
  validate,
} from "@hyperjump/json-schema/draft-2020-12";
import fc from "fast-check";
import { beforeAll, expect, it } from "vitest";
import { canonicalize } from "../log/canonical.ts";
import { anyAnswers } from "../testing/any-answers.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { createAjv } from "../validate/ajv.ts";
import { issueDocument } from "./issue-document.ts";
import type { Checklist, RepeatDefinition } from "./meta-schema.ts";
import { validateAnswers } from "./validate-answers.ts";

const SHAPES: Readonly<Record<string, Checklist>> = {
  EVERY_KIND,
  EXTENSION_LEAD,
  LEAVES_AND_SOCKETS,
};
const DAY = { closing: { value: 12, unit: "s", elapsed: 9 }, opened: "2026-02-28" };
const HASH = "f".repeat(64);
const ABSENT = { absent: { reason: "not-applicable" } };

interface Checks {
  readonly ajv: (answers: unknown) => boolean;
  /** A validator that shares no code with Ajv. */
  readonly other: (answers: unknown) => boolean;
  readonly ours: (answers: unknown) => boolean;
}
const checks = new Map<string, Checks>();
const checksOf = (name: string): Checks => checks.get(name) ?? expect.fail(name);

/** Both compile the text of the issued document, as it is sent and kept. */
const compile = async (doc: Checklist, uri: string): Promise<Checks> => {
  const issued = JSON.parse(canonicalize(issueDocument(doc)));
  registerSchema(issued, uri);
  const other: Validator = await validate(uri);
  unregisterSchema(uri);
  const ajv = createAjv().compile(issued);
  return {
    ajv: (answers) => ajv(answers),
    other: (answers) => other(JSON.parse(JSON.stringify(answers))).valid,
    ours: (answers) => validateAnswers(issued, answers).length === 0,
  };
};

beforeAll(async () => {
  for (const [name, doc] of Object.entries(SHAPES)) {
    checks.set(name, await compile(doc, `urn:roundbook:test:${name.toLowerCase()}`));
  }
});

it.each<[unknown, boolean]>([
  [{}, true],
  [DAY, true],
  [[], false],
  [null, false],
  [{ "gap_top@left": { value: 3, unit: "mm" }, "gap_top@right": ABSENT }, true],
  [{ gap_top: { value: 3, unit: "mm" } }, false],
  [{ gap_top: ABSENT }, false],
  [{ "gap_top@middle": { value: 3, unit: "mm" } }, false],
  [{ "gap_top@1": { value: 3, unit: "mm" } }, false],
  [{ "gap_top@left": "ok" }, false],
  [{ "hinges@left": 6, "hinges@right": 0 }, true],
  [{ "hinges@left": 7 }, false],
  [{ "hinges@left": -1 }, false],
  [{ "loops@12": [{ value: 1, unit: "Ohm" }] }, true],
  [{ "loops@13": [{ value: 1, unit: "Ohm" }] }, false],
  [{ "loops@0": [{ value: 1, unit: "Ohm" }] }, false],
  [{ "loops@01": [{ value: 1, unit: "Ohm" }] }, false],
  [{ "loops@1": [] }, false],
  [{ "plate@1": ["whole", "marked"] }, true],
  [{ "plate@1": ["whole", "whole"] }, false],
  [{ "plate@1": ["chipped"] }, false],
  [{ "plate@1": ABSENT }, true],
  [{ "closing@left": { value: 1, unit: "s" } }, false],
  [{ sum: 3 }, false],
  [{ sum: ABSENT }, false],
  [{ water: { sample: "A 1" }, signed: { signedBy: "M. Tolvane", drawing: HASH } }, true],
  [{ water: { sample: "A 1", result: { value: 1, unit: "mg" } } }, true],
  [{ water: { sample: "" } }, false],
  [{ signed: { drawing: HASH } }, false],
  [{ opened: "28.2.2026" }, false],
  [{ label: "x".repeat(21) }, false],
  [{ label: { commit: HASH } }, true],
])("answers %j of repeats and the newer kinds are well-formed: %s", (answers, sound) => {
  const { ajv, other, ours } = checksOf("LEAVES_AND_SOCKETS");
  expect([ajv(answers), other(answers), ours(answers)]).toEqual([sound, sound, sound]);
});

it.each(Object.keys(SHAPES))(
  "%s as issued says by itself which answers are well-formed: two independent validators agree",
  (name) => {
    const { ajv, other } = checksOf(name);
    let sound = 0;
    fc.assert(
      fc.property(anyAnswers(SHAPES[name] ?? EVERY_KIND), (answers) => {
        const verdict = ajv(answers);
        if (verdict) sound += 1;
        expect(other(answers)).toBe(verdict);
      }),
      { numRuns: 3000, seed: 20_261 },
    );
    expect(sound).toBeGreaterThan(100);
  },
);

const ALL_POINTS = { ...EVERY_KIND.properties, ...LEAVES_AND_SOCKETS.properties };

const NAMED: RepeatDefinition = {
  each: "Leaf",
  members: [
    { id: "left", title: "Left" },
    { id: "12", title: "Twelfth" },
  ],
};

/** Any of the points, any of them in two groups that may be repeats. */
const anyShape = fc
  .record({
    points: fc.uniqueArray(fc.constantFrom(...Object.keys(ALL_POINTS)), { minLength: 1 }),
    cut: fc.tuple(fc.nat(6), fc.nat(6)),
    repeats: fc.array(
      fc.oneof(
        fc.record({
          each: fc.constant("Socket"),
          count: fc.constant(2),
          atMost: fc.integer({ min: 1, max: 99 }),
        }),
        fc.constant(NAMED),
        fc.constant(null),
      ),
      { minLength: 2, maxLength: 2 },
    ),
  })
  .map(
    ({ points, cut: [first, second], repeats }): Checklist => ({
      ...EVERY_KIND,
      properties: Object.fromEntries(
        Object.entries(ALL_POINTS).filter(([id]) => points.includes(id)),
      ),
      groups: [points.slice(0, first), points.slice(first, first + second)].map((part, index) => ({
        id: `group_${index}`,
        title: "Group",
        points: part,
        ...(repeats[index] ? { repeat: repeats[index] } : {}),
      })),
    }),
  );

it("a checklist of any shape, once issued, is read alike by both validators and the sheet", async () => {
  const withAnswers = anyShape.chain((doc) =>
    fc.tuple(fc.constant(doc), fc.array(anyAnswers(doc), { minLength: 20, maxLength: 20 })),
  );
  let shape = 0;
  await fc.assert(
    fc.asyncProperty(withAnswers, async ([doc, given]) => {
      shape += 1;
      const { ajv, other, ours } = await compile(doc, `urn:roundbook:test:shape-${shape}`);
      for (const answers of given) {
        const sound = ajv(answers);
        expect(other(answers)).toBe(sound);
        expect(ours(answers)).toBe(sound);
      }
    }),
    { numRuns: 100, seed: 20_262 },
  );
}, 120_000);
