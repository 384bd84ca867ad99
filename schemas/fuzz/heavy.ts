import { DIALECT, JSON_SCHEMA_DRAFT } from "../checklist/meta-schema.ts";

const BASE = {
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Heavy",
  type: "object",
  additionalProperties: false,
};
const many = <T>(count: number, one: (index: number) => T): T[] =>
  Array.from({ length: count }, (_, index) => one(index));
const named = (count: number, name: (index: number) => string, one: (index: number) => unknown) =>
  Object.fromEntries(many(count, (index) => [name(index), one(index)]));
/** As many terms as a formula may have characters for. */
const sum = (terms: readonly string[]): string =>
  terms.reduce((text, term) => (text.length + term.length < 498 ? `${text} + ${term}` : text));

const LONG = "x".repeat(20);
const check = { $ref: "#/$defs/check", title: "Sound?" };
const reading = { $ref: "#/$defs/reading", title: "Length", quantity: { unit: "m" } };
const points = named(
  1000,
  (index) => `p${LONG}${index}`,
  () => check,
);
const strangers = many(500, (index) => `q${LONG}${index}`);
const score = { title: "Score", method: "sum", round: { rule: "down", decimals: 0 } };

/** Documents within the size limit, each with as many faults of one sort as fit into it. */
export const HEAVY: Readonly<Record<string, unknown>> = {
  "groups of unknown points": {
    ...BASE,
    properties: named(
      1000,
      (index) => `p${index}`,
      () => check,
    ),
    groups: many(100, (group) => ({
      id: `g${group}`,
      title: "Group",
      points: many(1000, (index) => `q${index}`),
    })),
  },
  "scores of unknown points": {
    ...BASE,
    properties: points,
    scores: named(
      20,
      (index) => `s${index}`,
      () => ({
        ...score,
        of: strangers,
        bands: [{ title: "All", from: 0 }],
      }),
    ),
  },
  "stops at unknown points": {
    ...BASE,
    properties: points,
    stops: many(50, () => ({
      after: strangers.slice(0, 100),
      on: ["fail"],
      points: strangers,
      say: "Stop.",
    })),
  },
  "wording of unknown places": {
    ...BASE,
    properties: points,
    wording: named(
      20,
      (index) => `l${String.fromCharCode(97 + index)}`,
      () =>
        named(
          900,
          (index) => `/properties/q${LONG}${index}/title`,
          () => "x",
        ),
    ),
  },
  "formulas of unknown names": {
    ...BASE,
    properties: named(
      150,
      (index) => `p${index}`,
      () => ({
        ...reading,
        limits: many(10, () => ({ max: sum(many(60, (index) => `answers.zz${index}`)) })),
      }),
    ),
  },
  "values that all need each other": {
    ...BASE,
    properties: points,
    values: named(
      100,
      (index) => `v${index}`,
      () => ({ formula: sum(many(100, (n) => `v${n}`)) }),
    ),
  },
  "values in a long chain": {
    ...BASE,
    properties: points,
    values: named(
      100,
      (index) => `v${index}`,
      (index) =>
        index === 99
          ? { const: 1 }
          : { formula: sum(many(99 - index, (n) => `v${index + n + 1}`)) },
    ),
  },
  "questions that hang on each other": {
    ...BASE,
    properties: named(
      700,
      (index) => `p${index}`,
      (index) => ({
        ...reading,
        ask: { when: many(20, (n) => `answers.p${(index + n * 7 + 1) % 700} > 1`).join(" && ") },
        limits: [{ max: 1 }],
      }),
    ),
  },
  "units that are none": {
    ...BASE,
    properties: named(
      1000,
      (index) => `p${index}`,
      () => ({
        ...reading,
        quantity: { unit: "mOhms", alsoIn: many(8, (index) => `Ohms${index}`) },
      }),
    ),
  },
  "options that are none": {
    ...BASE,
    properties: named(
      80,
      (index) => `p${index}`,
      () => ({
        ...check,
        $ref: "#/$defs/choice",
        oneOf: many(100, (index) => ({ const: `c${index}`, title: "Option" })),
        limits: many(3, () => ({ accept: many(100, (index) => `d${index}`) })),
      }),
    ),
  },
  "tables without an end": {
    ...BASE,
    properties: points,
    values: named(
      4,
      (index) => `v${index}`,
      () => ({
        table: {
          policy: "unique",
          inputs: many(8, (index) => `${index} * 1`),
          rules: many(200, (row) => ({
            when: many(8, (index) => ({ min: row * index, max: row * index + 90 })),
            // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
            then: row,
          })),
        },
      }),
    ),
  },
};
