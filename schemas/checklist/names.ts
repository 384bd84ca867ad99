import { compileFormula, plainName, wordsIn } from "../formulas/compile.ts";
import type { CompiledFormula, FormulaEngine, NameType } from "../formulas/engine-type.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { unitOf } from "../units/units.ts";
import { formulaTexts, valueTexts } from "./formula-texts.ts";
import { pointKind } from "./guards.ts";
import type {
  Checklist,
  ParticularDefinition,
  PointDefinition,
  ValueDefinition,
} from "./meta-schema.ts";

/** What formulas of a checklist may name, and how its values are worked out. */
export interface ChecklistNames {
  /** By full name: `asset.x`, `answers.x`, bare values. */
  readonly types: ReadonlyMap<string, NameType>;
  /** Values, each after the ones it needs; values in a circle are left out. */
  readonly order: readonly string[];
  /** Formulas and table inputs of values, by the JSON Pointer of their text. */
  readonly compiled: ReadonlyMap<string, CompiledFormula>;
  readonly problems: readonly Problem[];
}

const unitPart = (code: string | undefined) => {
  const unit = code === undefined ? undefined : unitOf(code);
  return unit ? { unit } : {};
};

const textOptions = (values: readonly unknown[] | undefined) =>
  values?.every((value): value is string => typeof value === "string") ? { options: values } : {};

/** The type of a particular; one without `type` has the type of its `enum`. */
export const particularType = (definition: ParticularDefinition): NameType => {
  const listed = definition.enum?.[0];
  const type = definition.type ?? (listed === undefined ? "string" : typeof listed);
  if (type === "number" || type === "integer") {
    return { type: "number", ...unitPart(definition.unit) };
  }
  if (type === "boolean") return { type };
  return { type: "string", ...textOptions(definition.enum) };
};

/** Number of a measured point in its quantity's unit. */
const measured = (point: PointDefinition): NameType => ({
  type: "number",
  ...unitPart(point.quantity?.unit),
});

/** What a formula sees of an answer; what is no single number or word is nothing to reckon with. */
const answerType = (point: PointDefinition): NameType | undefined => {
  const kind = pointKind(point);
  switch (kind) {
    case "check":
      return { type: "string", options: ["ok", "not-ok"] };
    case "choice": {
      const options = point.oneOf?.flatMap((one) => ("const" in one ? [one.const] : []));
      return { type: "string", ...textOptions(options) };
    }
    case "graded":
    case "count":
      return { type: "number" };
    case "reading":
    case "sample":
    case "calculated":
      return measured(point);
    case "readings":
      return point.several?.combine === "each" ? undefined : measured(point);
    case "choices":
    case "date":
    case "text":
    case "photo":
    case "signature":
      return undefined;
  }
};

const orderOf = (values: ReadonlyMap<string, ValueDefinition>) => {
  const order: string[] = [];
  const state = new Map<string, "open" | "done">();
  const circular = new Set<string>();
  const visit = (name: string, trail: readonly string[]): void => {
    if (state.get(name) === "open") {
      for (const member of trail.slice(trail.indexOf(name))) circular.add(member);
      return;
    }
    const value = values.get(name);
    if (!value || state.has(name)) return;
    state.set(name, "open");
    for (const [, text] of valueTexts(name, value)) {
      for (const word of wordsIn(text)) visit(word, [...trail, name]);
    }
    state.set(name, "done");
    order.push(name);
  };
  for (const name of values.keys()) visit(name, []);
  return { order: order.filter((name) => !circular.has(name)), circular: [...circular] };
};

/**
 * Works out the types of all names and compiles the formulas of values. Without an engine only
 * plain names compile; values that need one are left out.
 */
export const checklistNames = (doc: Checklist, engine?: FormulaEngine): ChecklistNames => {
  const types = new Map<string, NameType>();
  const compiled = new Map<string, CompiledFormula>();
  const problems: Problem[] = [];
  for (const [name, definition] of Object.entries(doc.particulars ?? {})) {
    types.set(`asset.${name}`, particularType(definition));
  }
  for (const [name, point] of Object.entries(doc.properties)) {
    const type = answerType(point);
    if (type) types.set(`answers.${name}`, type);
  }
  const values = new Map(Object.entries(doc.values ?? {}));
  const { order, circular } = orderOf(values);
  // Values of a circle keep the type they declare, so that one circle is one problem.
  for (const name of circular) {
    types.set(name, { type: "number", ...unitPart(values.get(name)?.unit) });
    problems.push(problem(at("/values", name), "value-cycle", { names: circular }));
  }
  for (const name of order) {
    const value = values.get(name);
    if (!value) continue;
    const declared = unitPart(value.unit);
    let type: NameType | undefined;
    for (const [pointer, text] of valueTexts(name, value)) {
      if (!engine && plainName(text) === null) continue;
      const expected = value.formula === undefined ? {} : declared;
      const result = compileFormula(text, types, expected, engine);
      if (!result.ok) problems.push(...result.problems.map((p) => ({ ...p, pointer })));
      else {
        compiled.set(pointer, result.value);
        if (value.formula !== undefined) {
          type = { type: result.value.type, unit: result.value.unit ?? undefined, ...declared };
        }
      }
    }
    if (value.table?.rules.every((rule) => typeof rule.then === "string"))
      type = { type: "string" };
    types.set(name, type ?? { type: "number", ...declared });
  }
  return { types, order, compiled, problems };
};

/** Whether judging needs the formula engine: a plain name of a value or particular does not. */
export const usesFormulas = (doc: Checklist): boolean =>
  formulaTexts(doc).some(([, text]) => plainName(text) === null);
