import {
  type ChecklistRow,
  coversProblems,
  type DefinedInterval,
  type IntervalDefinition,
  type IntervalRow,
  type Problem,
} from "@roundbook/schemas";

/** What one that was never put in force is called by, here alone. */
const NEW = "";

/** The intervals whose checklist is known. */
const defined = (
  rows: readonly Pick<IntervalRow, "id" | "definition">[],
  checklists: readonly ChecklistRow[],
): DefinedInterval[] =>
  rows.flatMap(({ id, definition }) => {
    const document = checklists.find((one) => one.id === definition.checklist)?.document;
    return document ? [{ id, definition, document }] : [];
  });

export interface Coverable {
  readonly row: IntervalRow;
  readonly covered: boolean;
  /** Why it cannot be covered; empty when it can. */
  readonly why: readonly Problem[];
}

/**
 * The other intervals of the type, and which of them this one may cover. A rule that cannot be
 * (`sound` is false) gives no reason: what it would cover cannot be told.
 */
export const coverable = (
  draft: IntervalDefinition,
  id: string | null,
  intervals: readonly IntervalRow[],
  checklists: readonly ChecklistRow[],
  sound: boolean,
): Coverable[] => {
  const all = defined(intervals, checklists);
  return intervals
    .filter((row) => row.id !== id && row.definition.assetType === draft.assetType)
    .map((row) => {
      const alone = { id: id ?? NEW, definition: { ...draft, covers: [row.id] } };
      const [own] = defined([alone], checklists);
      return {
        row,
        covered: draft.covers?.includes(row.id) ?? false,
        why: own && sound ? coversProblems(own, all) : [],
      };
    });
};

/** What is wrong with what it covers now; pointers are into the definition. */
export const coverProblems = (
  draft: IntervalDefinition,
  id: string | null,
  intervals: readonly IntervalRow[],
  checklists: readonly ChecklistRow[],
): readonly Problem[] => {
  const [own] = defined([{ id: id ?? NEW, definition: draft }], checklists);
  return own && draft.covers ? coversProblems(own, defined(intervals, checklists)) : [];
};

/** Titles of the intervals that cover this one. */
export const coveredBy = (id: string | null, intervals: readonly IntervalRow[]): string[] =>
  id === null
    ? []
    : intervals
        .filter(({ definition }) => definition.covers?.includes(id))
        .map(({ definition }) => definition.title);

/** With one more or one less covered; an interval that covers none says nothing of it. */
export const setCovered = (
  draft: IntervalDefinition,
  id: string,
  covered: boolean,
): IntervalDefinition => {
  const { covers = [], ...rest } = draft;
  const others = covers.filter((one) => one !== id);
  const next = covered ? [...others, id] : others;
  return next.length === 0 ? rest : { ...rest, covers: next };
};
