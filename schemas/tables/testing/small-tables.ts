import fc from "fast-check";
import type { TableCell, TableDefinition } from "../../checklist/meta-schema.ts";
import type { Scalar } from "../../formulas/engine-type.ts";
import { rule } from "../../testing/rule.ts";
import type { TableInput } from "../domain.ts";

/** One input of a small table: what is known of it, cells to choose from, and all that it can be. */
interface Column {
  readonly input: TableInput;
  readonly cells: fc.Arbitrary<TableCell>;
  /** At least one value of every sort that cells can tell apart. */
  readonly values: readonly Scalar[];
}

const edge = fc.integer({ min: 0, max: 4 });
const whole = Array.from({ length: 9 }, (_, index) => index - 2);
const halves = Array.from({ length: 17 }, (_, index) => index / 2 - 2);

const range = fc
  .record({ min: edge, max: edge, exclusiveMin: edge, exclusiveMax: edge }, { requiredKeys: [] })
  .filter((cell) => Object.keys(cell).length > 0);
const numbers = fc.oneof(
  range,
  range,
  fc.record({ min: edge, max: edge }),
  edge,
  fc.array(edge, { minLength: 1, maxLength: 3 }),
  fc.constant({ any: true as const }),
);
const words = fc.oneof(
  fc.constantFrom("a", "b", "c"),
  fc.subarray(["a", "b", "c"], { minLength: 1 }),
  fc.constant({ any: true as const }),
);
const truths = fc.oneof(fc.boolean(), fc.constant({ any: true as const }));

const within = (values: readonly number[]) => values.filter((value) => value >= 0 && value <= 4);

const columns: readonly Column[] = [
  { input: { type: "number" }, cells: numbers, values: halves },
  { input: { type: "number", minimum: 0, maximum: 4 }, cells: numbers, values: within(halves) },
  { input: { type: "number", integer: true }, cells: numbers, values: whole },
  {
    input: { type: "number", integer: true, minimum: 0, maximum: 4 },
    cells: numbers,
    values: within(whole),
  },
  { input: { type: "number", listed: [0, 1.5, 3] }, cells: numbers, values: [0, 1.5, 3] },
  { input: { type: "string" }, cells: words, values: ["a", "b", "c", "another"] },
  { input: { type: "string", listed: ["a", "b"] }, cells: words, values: ["a", "b"] },
  { input: { type: "boolean" }, cells: truths, values: [true, false] },
];

export interface SmallTable {
  readonly table: TableDefinition;
  readonly inputs: readonly TableInput[];
  /** Every combination of inputs, as far as cells can tell them apart. */
  readonly combinations: readonly (readonly Scalar[])[];
}

const product = (lists: readonly (readonly Scalar[])[]): readonly (readonly Scalar[])[] =>
  lists.reduce<readonly (readonly Scalar[])[]>(
    (rows, list) => rows.flatMap((row) => list.map((value) => [...row, value])),
    [[]],
  );

/** Tables of one to three inputs and up to six rows, small enough to try everything. */
export const smallTable = (
  policy: TableDefinition["policy"],
  expected?: number,
): fc.Arbitrary<SmallTable> =>
  fc.array(fc.constantFrom(...columns), { minLength: 1, maxLength: 3 }).chain((chosen) =>
    fc
      .array(
        fc.tuple(fc.tuple(...chosen.map(({ cells }) => cells)), fc.integer({ min: 1, max: 3 })),
        { minLength: 1, maxLength: 6 },
      )
      .map((rows) => ({
        table: {
          policy,
          ...(expected === undefined ? {} : { aggregate: "max", expect: expected }),
          inputs: chosen.map((_, index) => `asset.x${index}`),
          rules: rows.map(([when, outcome]) => rule(when, outcome)),
        },
        inputs: chosen.map(({ input }) => input),
        combinations: product(chosen.map(({ values }) => values)),
      })),
  );

const compare = (left: number, sign: string, right: number): boolean => {
  switch (sign) {
    case "<":
      return left < right;
    case "≤":
      return left <= right;
    case ">":
      return left > right;
    default:
      return left >= right;
  }
};

/** Whether a combination lies in a region as it is printed. */
export const liesIn = (where: readonly string[], combination: readonly Scalar[]): boolean =>
  where.every((condition) => {
    const name = /x(\d)/.exec(condition);
    const value = combination[Number(name?.[1])] ?? "";
    // "asset.x0 = a / b" is one alternative, "asset.x0 < 1 / asset.x0 > 3" are two.
    return condition.split(/ \/ (?=\S+ [<≤>≥=≠])/).some((one) => {
      const listed = /^asset\.x\d ([=≠]) (.*)$/.exec(one);
      if (listed) return listed[2]?.split(" / ").includes(String(value)) === (listed[1] === "=");
      const between = /^(\S+) ([<≤]) asset\.x\d ([<≤]) (\S+)$/.exec(one);
      if (between)
        return (
          compare(Number(between[1]), between[2] ?? "", Number(value)) &&
          compare(Number(value), between[3] ?? "", Number(between[4]))
        );
      const side = /^asset\.x\d ([<≤>≥]) (\S+)$/.exec(one);
      return side ? compare(Number(value), side[1] ?? "", Number(side[2])) : true;
    });
  });
