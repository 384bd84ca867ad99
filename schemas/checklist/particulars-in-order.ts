import type { ParticularDefinitions } from "./meta-schema.ts";

const place = (order: number | undefined): number => order ?? Number.MAX_SAFE_INTEGER;

/** Particulars as forms list them: by their `order`, those without one last, as they stand. */
export const particularsInOrder = (
  definitions: ParticularDefinitions,
): readonly (readonly [string, ParticularDefinitions[string]])[] =>
  Object.entries(definitions)
    .map(([name, definition], at) => ({ name, definition, at }))
    .sort((a, b) => place(a.definition.order) - place(b.definition.order) || a.at - b.at)
    .map(({ name, definition }) => [name, definition] as const);

/** The same particulars with their order written down, since a canonical form sorts its members. */
export const numberParticulars = (definitions: ParticularDefinitions): ParticularDefinitions =>
  Object.fromEntries(
    particularsInOrder(definitions).map(([name, definition], at) => [
      name,
      { ...definition, order: at + 1 },
    ]),
  );
