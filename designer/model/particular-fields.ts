import { printUnit } from "@roundbook/runner/form";
import {
  type ParticularDefinition,
  type ParticularDefinitions,
  particularsInOrder,
} from "@roundbook/schemas";
import { type ParticularKind, typeOf } from "./around-edit.ts";
import { nameFor } from "./names.ts";
import { readNumber } from "./read-number.ts";
import { readUnit } from "./read-unit.ts";

/** A particular as a form edits it: everything typed is text until it is saved. */
export interface ParticularField {
  /** Empty until first saved: then it is its name for ever. */
  name: string;
  title: string;
  kind: ParticularKind;
  unit: string;
  choices: string;
  minimum: string;
  maximum: string;
}

export const EMPTY_FIELD: ParticularField = {
  name: "",
  title: "",
  kind: "number",
  unit: "",
  choices: "",
  minimum: "",
  maximum: "",
};

const kindOf = (definition: ParticularDefinition): ParticularField["kind"] => {
  const { type, enum: choices, format } = definition;
  if (format === "date") return "date";
  if (type === "boolean") return "boolean";
  if (type === "number" || type === "integer") return "number";
  return choices?.every((one) => typeof one === "number") ? "number" : "string";
};

export const toFields = (definitions: ParticularDefinitions): ParticularField[] =>
  particularsInOrder(definitions).map(([name, definition]) => ({
    name,
    title: definition.title,
    kind: kindOf(definition),
    unit: definition.unit === undefined ? "" : printUnit(definition.unit),
    choices: definition.enum?.join(", ") ?? "",
    minimum: definition.minimum === undefined ? "" : String(definition.minimum),
    maximum: definition.maximum === undefined ? "" : String(definition.maximum),
  }));

const choicesOf = (field: ParticularField): (number | string)[] =>
  field.choices
    .split(field.kind === "number" ? /[;\s]+|,\s+|,(?=\S)/ : /[,;]/)
    .map((choice) => choice.trim())
    .filter((choice) => choice !== "")
    .map((choice) => (field.kind === "number" ? (readNumber(choice) ?? choice) : choice));

/** What the form does not show stays as it was. */
const keptOf = (field: ParticularField, before: ParticularDefinition | undefined) => {
  const { description, maxLength, pattern, type } = before ?? {};
  return {
    ...(description === undefined ? {} : { description }),
    ...(maxLength === undefined || field.kind !== "string" ? {} : { maxLength }),
    ...(pattern === undefined || field.kind !== "string" ? {} : { pattern }),
    ...(type === "integer" && field.kind === "number" ? { type } : typeOf(field.kind)),
  };
};

const definitionOf = (
  field: ParticularField,
  order: number,
  before: ParticularDefinition | undefined,
): ParticularDefinition => {
  const choices = choicesOf(field);
  const minimum = readNumber(field.minimum);
  const maximum = readNumber(field.maximum);
  const ranged = field.kind === "number" && choices.length === 0;
  const unit = readUnit(field.unit) ?? field.unit.trim();
  return {
    title: field.title.trim(),
    order,
    ...keptOf(field, before),
    ...(field.kind === "number" && unit !== "" ? { unit } : {}),
    ...(choices.length > 0 && (field.kind === "number" || field.kind === "string")
      ? { enum: choices }
      : {}),
    ...(ranged && minimum !== undefined ? { minimum } : {}),
    ...(ranged && maximum !== undefined ? { maximum } : {}),
  };
};

/** The form's lines as definitions; lines without a title are left out. */
export const fromFields = (
  fields: readonly ParticularField[],
  before: ParticularDefinitions = {},
): ParticularDefinitions => {
  const taken = new Set(fields.map(({ name }) => name).filter((name) => name !== ""));
  const definitions: Record<string, ParticularDefinition> = {};
  fields
    .filter(({ title }) => title.trim() !== "")
    .forEach((field, at) => {
      const name = field.name || nameFor(field.title, taken, "particular");
      taken.add(name);
      definitions[name] = definitionOf(field, at + 1, before[name]);
    });
  return definitions;
};
