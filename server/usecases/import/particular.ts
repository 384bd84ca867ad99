import {
  at,
  type ParticularDefinition,
  type ParticularDefinitions,
  type Particulars,
  parseParticulars,
  type Result,
} from "@roundbook/schemas";
import { patterns } from "../engines.ts";
import { bad, type DecimalMark, good, readNumber, readWhole } from "./cell.ts";
import type { Fault } from "./tally.ts";

const YES = ["true", "yes", "1"];
const NO = ["false", "no", "0"];

/**
 * The particulars of a row by the columns mapped to them, in the units their definitions name. An
 * empty cell is a particular nobody knows, and is left out.
 */
export function readParticulars(
  definitions: ParticularDefinitions,
  columns: Readonly<Record<string, string>>,
  cell: (column: string) => string,
  decimal: DecimalMark,
): { readonly particulars: Particulars; readonly faults: readonly Fault[] } {
  const particulars: Record<string, number | string | boolean> = {};
  const faults: Fault[] = [];
  for (const [name, column] of Object.entries(columns)) {
    const text = cell(column);
    if (text === "") continue;
    const definition = Object.hasOwn(definitions, name) ? definitions[name] : undefined;
    const pointer = at("/asset/particulars", name);
    // A name without a definition is told by the check below.
    const value = definition ? readValue(definition, text, decimal) : good(text);
    const found = value.ok
      ? parseParticulars(definitions, { [name]: value.value }, patterns)
      : value.problems;
    for (const fault of found) faults.push({ column, problem: { ...fault, pointer } });
    if (value.ok) particulars[name] = value.value;
  }
  return { particulars, faults };
}

function readValue(
  { type, enum: allowed }: ParticularDefinition,
  text: string,
  decimal: DecimalMark,
): Result<number | string | boolean> {
  switch (type) {
    case "number":
      return readNumber(text, decimal);
    case "integer":
      return readWhole(text, decimal);
    case "boolean": {
      const word = text.toLowerCase();
      if (YES.includes(word)) return good(true);
      return NO.includes(word) ? good(false) : bad("boolean-format", { text });
    }
    case "string":
      return good(text);
    case undefined:
      // An enumeration without a type holds its values as they are listed.
      return good(allowed?.find((value) => String(value) === text) ?? text);
  }
}
