import {
  type Checklist,
  DIALECT,
  JSON_SCHEMA_DRAFT,
  type PointDefinition,
  type TableDefinition,
  type ValueDefinition,
} from "@roundbook/schemas";

type Rule = TableDefinition["rules"][number];

const rule = (when: Rule["when"], outcome: number): Rule => ({
  when,
  // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
  then: outcome,
});

const KINDS = ["I", "II", "III", "IV"];
const PLACES = ["dry", "wet"];

/** One of five steps of a length, so that they touch and leave nothing out. */
const step = (at: number, width: number): Rule["when"][number] => {
  if (at === 0) return { max: width };
  return at === 4
    ? { exclusiveMin: at * width }
    : { exclusiveMin: at * width, max: (at + 1) * width };
};

/** 5 × 5 × 4 × 2 rules that cover everything once, less one in the middle. */
export const TABLE_WITH_A_HOLE: TableDefinition = {
  policy: "unique",
  inputs: ["asset.length", "asset.load", "asset.kind", "asset.place"],
  rules: Array.from({ length: 200 }, (_, at) =>
    rule(
      [
        step(at % 5, 7),
        step(Math.floor(at / 5) % 5, 110),
        KINDS[Math.floor(at / 25) % 4] ?? "",
        PLACES[Math.floor(at / 100)] ?? "",
      ],
      at,
    ),
  ).toSpliced(77, 1, rule([{ max: 7 }, { max: 110 }, "I", "dry"], 77)),
};

/** 200 rules of which no two have a bound in common: ranges that lie across one another. */
export const TABLE_OF_RANGES: TableDefinition = {
  policy: "any",
  inputs: ["asset.length", "asset.load", "asset.kind", "asset.place"],
  rules: Array.from({ length: 200 }, (_, at) => {
    const low = (at * 37) % 101;
    return rule(
      [
        { min: low, max: low + 60 + at / 1000 },
        { min: (at * 53) % 97, max: 150 + at / 1000 },
        [KINDS[at % 4] ?? "", KINDS[(at + 1) % 4] ?? ""],
        { any: true },
      ],
      1,
    );
  }),
};

const values = (): Record<string, ValueDefinition> =>
  Object.fromEntries(
    Array.from({ length: 40 }, (_, at): [string, ValueDefinition] => [
      `v${at}`,
      at % 4 === 0
        ? {
            unit: "Ohm",
            table: {
              policy: "unique",
              inputs: ["asset.length", "asset.kind"],
              rules: KINDS.flatMap((kind, row) =>
                [0, 1, 2, 3, 4].map((one) => rule([step(one, 5 + at / 4), kind], row + one)),
              ),
            },
          }
        : { formula: `0.1 + asset.length * ${at}.5` },
    ]),
  );

const point = (at: number): PointDefinition => ({
  $ref: "#/$defs/reading",
  title: `Reading ${at}`,
  quantity: { unit: "Ohm", alsoIn: ["mOhm"], decimals: 2 },
  limits: [
    { max: `v${at % 40} * 1.5`, basis: "bench" },
    {
      min: 0,
      severity: "advisory",
      when: `asset.kind == '${KINDS[at % 4]}'`,
      basis: "bench",
    },
  ],
  ask: {
    mandatory: true,
    ...(at === 0 ? {} : { when: `answers.p${at - 1} > ${at}.25` }),
  },
});

/** 200 points whose limits hang on 30 formulas and 10 tables. */
export const TWO_HUNDRED_POINTS: Checklist = {
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title: "Two hundred points",
  type: "object",
  particulars: {
    length: { title: "Length", type: "number", minimum: 0, maximum: 100 },
    kind: { title: "Kind", enum: KINDS },
  },
  values: values(),
  properties: Object.fromEntries(Array.from({ length: 200 }, (_, at) => [`p${at}`, point(at)])),
  additionalProperties: false,
};
