import type { ParticularDefinition } from "../checklist/meta-schema.ts";
import { particularType } from "../checklist/names.ts";
import type { Scalar } from "../formulas/engine-type.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { tableProblems } from "../tables/analyse.ts";
import type { TableInput } from "../tables/domain.ts";
import { parseDuration } from "./duration.ts";
import { factorOf } from "./kinds/by-risk.ts";
import { meanDays } from "./mean-days.ts";
import { type Worse, worseIsLonger } from "./risk-order.ts";
import type { RuleContext } from "./rule-context.ts";
import type { RuleOf } from "./rule-schema.ts";

type Rule = RuleOf<"by-risk">;

const ASSET = /^\s*asset\.[a-z][a-z0-9_]*\s*$/;

const orderOf = ({ worse }: Rule, name: string): Worse | undefined =>
  Object.hasOwn(worse, name) ? (worse[name] as Worse) : undefined;

function outcomeProblems({ table, early, late }: Rule): readonly Problem[] {
  const problems = table.rules.flatMap(({ then }, row) => {
    const pointer = at("/table/rules", row, "then");
    const text = String(then);
    if (typeof then !== "string" || parseDuration(then) === undefined)
      return [problem(pointer, "risk-not-a-duration", { text })];
    return meanDays(then) === 0 ? [problem(pointer, "duration-of-nothing")] : [];
  });
  if (problems.length > 0) return problems;
  const every = table.rules
    .map(({ then }) => String(then))
    .reduce((least, one) => (meanDays(one) < meanDays(least) ? one : least));
  return Object.entries({ early, late }).flatMap(([name, margin]) =>
    margin !== undefined && meanDays(margin) > meanDays(every)
      ? [problem(at("", name), "window-longer-than-interval", { margin, every })]
      : [],
  );
}

function inputProblems({ table, worse }: Rule, { particulars }: RuleContext): readonly Problem[] {
  const known = particulars === undefined ? null : Object.keys(particulars);
  const names = table.inputs.map(factorOf);
  return [
    ...table.inputs.flatMap((input, column) => {
      const name = names[column] ?? "";
      if (ASSET.test(input) && known?.includes(name) !== false) return [];
      const params = { name: input.trim(), known: (known ?? []).map((one) => `asset.${one}`) };
      return [problem(at("/table/inputs", column), "risk-unknown-factor", params)];
    }),
    ...Object.keys(worse)
      .filter((name) => !names.includes(name))
      .map((name) => problem(at("/worse", name), "risk-unknown-factor", { name, known: names })),
  ];
}

/** The values of a particular that has only some. */
const valuesOf = (definition: ParticularDefinition): readonly Scalar[] | undefined =>
  definition.enum ?? (definition.type === "boolean" ? [false, true] : undefined);

/** What is wrong with the order of one factor's values. */
function orderProblems(
  name: string,
  worse: Worse | undefined,
  definition: ParticularDefinition | undefined,
): readonly Problem[] {
  const pointer = at("/worse", name);
  const none = [problem(pointer, "risk-factor-without-order", { name })];
  if (worse === undefined) return none;
  if (definition === undefined) return [];
  if (typeof worse === "string") return particularType(definition).type === "number" ? [] : none;
  const values = valuesOf(definition);
  // What can be any number or text has more values than a list of them.
  if (values === undefined) return none;
  const lacking = values.filter((value) => !worse.includes(value));
  const more = worse.filter((value) => !values.includes(value));
  const told = (code: string, list: readonly Scalar[]) =>
    list.length > 0 ? [problem(pointer, code, { name, values: list.map(String) })] : [];
  return [...told("risk-order-incomplete", lacking), ...told("risk-order-unknown", more)];
}

/** What a factor can be. */
function inputOf(worse: Worse, definition: ParticularDefinition | undefined): TableInput {
  if (definition === undefined)
    return typeof worse === "string" ? { type: "number" } : { listed: worse };
  const { type, minimum, maximum } = definition;
  const bounds = { integer: type === "integer", minimum, maximum };
  return { ...bounds, type: particularType(definition).type, listed: definition.enum };
}

/**
 * What an interval by risk asks that cannot be; pointers are into the rule. Outcomes are durations,
 * inputs are particulars with an order from mild to worst, the table has neither hole nor overlap
 * within what they can be, and a worse factor never gives more time.
 */
export function riskProblems(rule: Rule, context: RuleContext = {}): readonly Problem[] {
  const { table } = rule;
  const names = table.inputs.map(factorOf);
  const definitions = names.map((name) =>
    context.particulars !== undefined && Object.hasOwn(context.particulars, name)
      ? context.particulars[name]
      : undefined,
  );
  const orders = names.map((name) => orderOf(rule, name));
  const problems = [
    ...outcomeProblems(rule),
    ...inputProblems(rule, context),
    ...[...new Set(names)].flatMap((name) =>
      orderProblems(name, orderOf(rule, name), definitions[names.indexOf(name)]),
    ),
  ];
  const known = orders.filter((order) => order !== undefined);
  if (problems.length > 0 || known.length < names.length) return problems;
  const inputs = known.map((order, index) => inputOf(order, definitions[index]));
  const found = tableProblems(table, inputs).map((one) => ({
    ...one,
    pointer: `/table${one.pointer}`,
  }));
  // Where rows do not fit together, the analysis has said so and nothing more can be told.
  const readable = found.every(({ code }) => /hole|overlap|more-found|unreachable/.test(code));
  return readable ? [...found, ...worseIsLonger(table, names, known, inputs)] : found;
}
