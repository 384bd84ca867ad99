import type { ParticularDefinition, ParticularDefinitions, RuleOf } from "@roundbook/schemas";

export type RiskRule = RuleOf<"by-risk">;
export type RiskRow = RiskRule["table"]["rules"][number];
export type Cell = RiskRow["when"][number];
export type Worse = RiskRule["worse"][string];
type Scalar = string | number | boolean;

const ANY = { any: true } as const;

/** "use" of "asset.use". */
export const factorOf = (input: string): string => input.trim().replace(/^asset\./, "");
export const factorsOf = (rule: RiskRule): string[] => rule.table.inputs.map(factorOf);

/** The values that a factor has, where it has only some. */
export const valuesOf = ({ enum: listed, type }: ParticularDefinition): readonly Scalar[] | null =>
  listed ?? (type === "boolean" ? [false, true] : null);

/** Particulars that a risk can rest on: what is chosen from a list, a yes or no, a number. */
export const possibleFactors = (particulars: ParticularDefinitions): string[] =>
  Object.entries(particulars)
    .filter(([, one]) => valuesOf(one) !== null || /number|integer/.test(String(one.type)))
    .map(([name]) => name);

const firstOrder = (definition: ParticularDefinition | undefined): Worse => {
  const values = definition ? valuesOf(definition) : null;
  return values && values.length > 1 ? [...values] : "up";
};

// biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
const FIRST_OUTCOME = { then: "P6M" } as const;

export const beginRisk = (particulars: ParticularDefinitions): RiskRule => {
  const rule: RiskRule = {
    kind: "by-risk",
    table: { policy: "unique", inputs: [""], rules: [{ when: [ANY], ...FIRST_OUTCOME }] },
    worse: {},
  };
  const [first] = possibleFactors(particulars);
  return first === undefined ? rule : setFactor(rule, 0, first, particulars);
};

const withTable = (rule: RiskRule, members: Partial<RiskRule["table"]>): RiskRule => ({
  ...rule,
  table: { ...rule.table, ...members },
});

const worseOf = (rule: RiskRule, names: readonly string[]): RiskRule["worse"] =>
  Object.fromEntries(Object.entries(rule.worse).filter(([name]) => names.includes(name)));

/** Another particular in a column; its cells fit any of its values. */
export const setFactor = (
  rule: RiskRule,
  column: number,
  name: string,
  particulars: ParticularDefinitions,
): RiskRule => {
  if (factorsOf(rule)[column] === name) return rule;
  const inputs = rule.table.inputs.toSpliced(column, 1, `asset.${name}`);
  const rules = rule.table.rules.map((row) => ({
    ...row,
    when: row.when.toSpliced(column, 1, ANY),
  }));
  const next = withTable(rule, { inputs, rules });
  const worse = { [name]: firstOrder(particulars[name]), ...worseOf(rule, factorsOf(next)) };
  return { ...next, worse };
};

export const addFactor = (
  rule: RiskRule,
  name: string,
  particulars: ParticularDefinitions,
): RiskRule => {
  const inputs = [...rule.table.inputs, ""];
  const rules = rule.table.rules.map((row) => ({ ...row, when: [...row.when, ANY] }));
  return setFactor(withTable(rule, { inputs, rules }), inputs.length - 1, name, particulars);
};

/** A table without one of its columns; the last one stays. */
export const removeFactor = (rule: RiskRule, column: number): RiskRule => {
  if (rule.table.inputs.length === 1) return rule;
  const inputs = rule.table.inputs.toSpliced(column, 1);
  const rules = rule.table.rules.map((row) => ({ ...row, when: row.when.toSpliced(column, 1) }));
  const next = withTable(rule, { inputs, rules });
  return { ...next, worse: worseOf(next, factorsOf(next)) };
};

export const addRow = (rule: RiskRule): RiskRule =>
  withTable(rule, {
    rules: [...rule.table.rules, { when: rule.table.inputs.map(() => ANY), ...FIRST_OUTCOME }],
  });

export const removeRow = (rule: RiskRule, at: number): RiskRule =>
  rule.table.rules.length === 1
    ? rule
    : withTable(rule, { rules: rule.table.rules.toSpliced(at, 1) });

export const changeRow = (
  rule: RiskRule,
  at: number,
  change: (row: RiskRow) => RiskRow,
): RiskRule =>
  withTable(rule, {
    rules: rule.table.rules.map((row, index) => (index === at ? change(row) : row)),
  });

export const setCell = (rule: RiskRule, at: number, column: number, cell: Cell): RiskRule =>
  changeRow(rule, at, (row) => ({ ...row, when: row.when.toSpliced(column, 1, cell) }));

export const setWorse = (rule: RiskRule, name: string, worse: Worse): RiskRule => ({
  ...rule,
  worse: { ...rule.worse, [name]: worse },
});

/** The values a cell names; null where it fits any. */
export const chosenIn = (cell: Cell): readonly Scalar[] | null => {
  if (Array.isArray(cell)) return cell as Scalar[];
  return typeof cell === "object" ? null : [cell];
};

/** A cell of chosen values; of all or none it fits any. */
export const cellOf = (chosen: readonly Scalar[], values: readonly Scalar[]): Cell => {
  const inOrder = values.filter((value) => chosen.includes(value));
  if (inOrder.length === 0 || inOrder.length === values.length) return ANY;
  return inOrder.length === 1 ? (inOrder[0] as Scalar) : [...inOrder];
};

const NUMBER = String.raw`(-?\d+(?:[.,]\d+)?)`;
const FORMS: readonly (readonly [RegExp, (a: number, b: number) => Cell])[] = [
  [new RegExp(`^up to ${NUMBER}$`), (max) => ({ max })],
  [new RegExp(`^(?:from )?${NUMBER} (?:on|or more)$`), (min) => ({ min })],
  [new RegExp(`^(?:over|above) ${NUMBER}$`), (exclusiveMin) => ({ exclusiveMin })],
  [new RegExp(`^(?:under|below) ${NUMBER}$`), (exclusiveMax) => ({ exclusiveMax })],
  [
    new RegExp(`^(?:over|above) ${NUMBER} (?:up )?to ${NUMBER}$`),
    (exclusiveMin, max) => ({ exclusiveMin, max }),
  ],
  [
    new RegExp(`^(?:from )?${NUMBER} to (?:under|below) ${NUMBER}$`),
    (min, exclusiveMax) => ({ min, exclusiveMax }),
  ],
  [
    new RegExp(`^(?:over|above) ${NUMBER} to (?:under|below) ${NUMBER}$`),
    (exclusiveMin, exclusiveMax) => ({ exclusiveMin, exclusiveMax }),
  ],
  [new RegExp(`^(?:from )?${NUMBER} (?:to|–|-) ${NUMBER}$`), (min, max) => ({ min, max })],
  [new RegExp(`^${NUMBER}$`), (value) => value],
];

/** "up to 5", "over 5 to 10", "over 10" or "any" as a cell of numbers. */
export const readRange = (written: string): Cell | undefined => {
  const words = written.trim().toLowerCase().replace(/\s+/g, " ");
  if (words === "" || words === "any") return ANY;
  for (const [form, cell] of FORMS) {
    const [, a, b] = form.exec(words) ?? [];
    if (a !== undefined) return cell(Number(a.replace(",", ".")), Number(b?.replace(",", ".")));
  }
  return undefined;
};

/** A cell in words that `readRange` reads back, where it is one of numbers. */
export const cellWords = (cell: Cell): string => {
  if (Array.isArray(cell)) return cell.map(String).join(", ");
  if (typeof cell !== "object") return cell === true ? "yes" : cell === false ? "no" : String(cell);
  const { min, max, exclusiveMin, exclusiveMax } = cell as Readonly<Record<string, number>>;
  const from =
    min !== undefined ? `${min}` : exclusiveMin !== undefined ? `over ${exclusiveMin}` : "";
  const to =
    max !== undefined ? `${max}` : exclusiveMax !== undefined ? `under ${exclusiveMax}` : "";
  if (from === "" && to === "") return "any";
  if (from === "") return max !== undefined ? `up to ${to}` : to;
  if (to === "") return min !== undefined ? `${from} or more` : from;
  return `${from} to ${to}`;
};

/** An order written "mildest, …, worst"; undefined when it is not of exactly these values. */
export const readOrder = (written: string, values: readonly Scalar[]): Scalar[] | undefined => {
  const words = written.split(/[,;<\n]/).map((one) => one.trim());
  const order = words.map((word) => values.find((value) => valueWords(value) === word));
  const whole = order.length === values.length && new Set(order).size === values.length;
  return whole && !order.includes(undefined) ? (order as Scalar[]) : undefined;
};

export const valueWords = (value: Scalar): string =>
  value === true ? "yes" : value === false ? "no" : String(value);
