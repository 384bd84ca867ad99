import {
  type ParticularDefinition,
  particularsInOrder,
  type ValueDefinition,
} from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";
import { nameFor } from "./names.ts";
import { readNumber } from "./read-number.ts";

/** Commands on what stands around the points; pure, as those on points are. */
const without = <T>(map: Readonly<Record<string, T>> | undefined, name: string) => {
  const { [name]: _, ...rest } = map ?? {};
  return rest;
};

const names = (map: object | undefined) => new Set(Object.keys(map ?? {}));

export const addParticular = (document: DraftDocument, title: string) => {
  const last = particularsInOrder(document.particulars ?? {}).at(-1)?.[1].order ?? 0;
  const name = nameFor(title, names(document.particulars), "particular");
  const made: ParticularDefinition = { title, order: last + 1, type: "number" };
  return {
    name,
    document: { ...document, particulars: { ...document.particulars, [name]: made } },
  };
};

export const changeParticular = (
  document: DraftDocument,
  name: string,
  change: (definition: ParticularDefinition) => ParticularDefinition,
): DraftDocument => {
  const before = document.particulars?.[name];
  return before
    ? { ...document, particulars: { ...document.particulars, [name]: change(before) } }
    : document;
};

export const removeParticular = (document: DraftDocument, name: string): DraftDocument => ({
  ...document,
  particulars: without(document.particulars, name),
});

export const PARTICULAR_KINDS = ["number", "string", "date", "boolean"] as const;
export type ParticularKind = (typeof PARTICULAR_KINDS)[number];

export const particularKind = (definition: ParticularDefinition): ParticularKind => {
  const { type, enum: choices, format } = definition;
  if (format === "date") return "date";
  if (type === "boolean") return "boolean";
  if (type === "number" || type === "integer") return "number";
  return type === undefined && typeof choices?.[0] === "number" ? "number" : "string";
};

/** A date is a text of a certain form. */
export const typeOf = (kind: ParticularKind): Pick<ParticularDefinition, "type" | "format"> =>
  kind === "date" ? { type: "string", format: "date" } : { type: kind };

/** Another kind keeps the title and its place; a unit, bounds or choices of the old one go. */
export const withKind = (
  definition: ParticularDefinition,
  kind: ParticularKind,
): ParticularDefinition => {
  if (particularKind(definition) === kind) return definition;
  const { title, description, order } = definition;
  return {
    title,
    ...(description === undefined ? {} : { description }),
    ...(order === undefined ? {} : { order }),
    ...typeOf(kind),
  };
};

/** Choices typed a line each, or apart by commas; undefined when a number is asked and one is none. */
export const readChoices = (
  text: string,
  kind: ParticularKind,
): (string | number)[] | undefined => {
  const words = text
    .split(/[\n;]|,\s+|\s\/\s/)
    .map((one) => one.trim())
    .filter(Boolean);
  if (kind !== "number") return [...new Set(words)];
  const numbers = words.map(readNumber);
  return numbers.every((one) => one !== undefined) ? [...new Set(numbers as number[])] : undefined;
};

/** "0.5 to 100": the two ends; either may be left out as "to 100" or "0.5 to". */
export const readRange = (text: string): { min?: number; max?: number } | undefined => {
  const match = /^\s*(-?[\d.,]*)\s*(?:to|…|\.\.\.|–)\s*(-?[\d.,]*)\s*$/.exec(text);
  if (!match) return text.trim() === "" ? {} : undefined;
  const ends = [match[1], match[2]].map((end) => (end === "" ? null : readNumber(end ?? "")));
  const [min, max] = ends;
  if (min === undefined || max === undefined) return undefined;
  if (min !== null && max !== null && min > max) return undefined;
  return { ...(min === null ? {} : { min }), ...(max === null ? {} : { max }) };
};

export const addValue = (document: DraftDocument, title: string) => {
  const name = nameFor(title, names(document.values), "value");
  const made: ValueDefinition = { title, const: 0 };
  return { name, document: { ...document, values: { ...document.values, [name]: made } } };
};

export const changeValue = (
  document: DraftDocument,
  name: string,
  change: (definition: ValueDefinition) => ValueDefinition,
): DraftDocument => {
  const before = document.values?.[name];
  return before
    ? { ...document, values: { ...document.values, [name]: change(before) } }
    : document;
};

export const removeValue = (document: DraftDocument, name: string): DraftDocument => ({
  ...document,
  values: without(document.values, name),
});

/** A value is one thing only: a number given takes the place of a formula, and the other way. */
export const withAmount = (value: ValueDefinition, amount: number | string): ValueDefinition => {
  const { const: _, formula: __, table: ___, ...rest } = value;
  return typeof amount === "number" ? { ...rest, const: amount } : { ...rest, formula: amount };
};
