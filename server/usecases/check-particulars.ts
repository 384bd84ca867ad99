import {
  at,
  type ParticularDefinition,
  type ParticularDefinitions,
  type Particulars,
  type Problem,
  problem,
} from "@roundbook/schemas";

function problemOf(pointer: string, definition: ParticularDefinition, value: Particulars[string]) {
  const { type, minimum, maximum, maxLength } = definition;
  const kind = typeof value;
  if (type !== undefined) {
    const expected = type === "integer" ? "number" : type;
    if (kind !== expected || (type === "integer" && !Number.isInteger(value)))
      return problem(pointer, "wrong-type", { expected: type });
  }
  if (definition.enum && !definition.enum.includes(value))
    return problem(pointer, "not-one-of", { allowed: definition.enum.map(String) });
  if (typeof value === "number") {
    if (minimum !== undefined && value < minimum) return problem(pointer, "too-small", { minimum });
    if (maximum !== undefined && value > maximum) return problem(pointer, "too-large", { maximum });
  }
  if (typeof value === "string" && maxLength !== undefined && value.length > maxLength)
    return problem(pointer, "too-long", { maxLength });
  return undefined;
}

/**
 * What is wrong with particulars by their definitions. One that is missing is no fault here: a
 * limit that needs it is undecided and says so.
 */
export function checkParticulars(
  definitions: ParticularDefinitions,
  particulars: Particulars,
): Problem[] {
  return Object.entries(particulars).flatMap(([name, value]) => {
    const pointer = at("/particulars", name);
    const definition = Object.hasOwn(definitions, name) ? definitions[name] : undefined;
    if (!definition)
      return [problem(pointer, "unknown-particular", { known: Object.keys(definitions) })];
    const found = problemOf(pointer, definition, value);
    return found ? [found] : [];
  });
}
