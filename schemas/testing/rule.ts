import type { TableCell, TableDefinition } from "../checklist/meta-schema.ts";

/** One rule of a decision table. */
export const rule = (
  when: TableCell[],
  outcome: number | string,
): TableDefinition["rules"][number] => ({
  when,
  // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
  then: outcome,
});
