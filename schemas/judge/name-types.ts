import type { Checklist, PointDefinition, ValueDefinition } from "../checklist/meta-schema.ts";
import type { NameType, NameTypes, ScalarType } from "../formulas/engine-type.ts";
import { unitOf } from "../units/units.ts";
import { kindOf } from "./kind.ts";

const named = (type: ScalarType, unit: string | undefined): NameType => {
  const known = unit === undefined ? undefined : unitOf(unit);
  return known === undefined ? { type } : { type, unit: known };
};

function answerType(point: PointDefinition): NameType | undefined {
  switch (kindOf(point)) {
    case "check":
    case "choice":
      return { type: "string" };
    case "graded":
      return { type: "number" };
    case "reading":
      return named("number", point.quantity?.unit);
    default:
      return undefined;
  }
}

function valueType({ table, unit }: ValueDefinition): NameType {
  const words = table?.rules.some((rule) => typeof rule.then === "string") === true;
  return words ? { type: "string" } : named("number", unit);
}

/** What the formulas of a checklist may name: particulars, answers and values. */
export function nameTypes(doc: Checklist): NameTypes {
  const names = new Map<string, NameType>();
  for (const [name, { type, enum: values, unit }] of Object.entries(doc.particulars ?? {})) {
    const first = typeof values?.[0];
    const scalar = first === "number" || first === "boolean" ? first : "string";
    names.set(
      `asset.${name}`,
      named(type === undefined ? scalar : type === "integer" ? "number" : type, unit),
    );
  }
  for (const [name, point] of Object.entries(doc.properties)) {
    const type = answerType(point);
    if (type !== undefined) names.set(`answers.${name}`, type);
  }
  for (const [name, value] of Object.entries(doc.values ?? {})) names.set(name, valueType(value));
  return names;
}
