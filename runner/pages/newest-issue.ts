import type { ChecklistRow } from "@roundbook/schemas";

/** The issue of a checklist that is filled in today. */
export const newestIssue = (
  checklists: readonly ChecklistRow[],
  id: string,
): ChecklistRow | undefined => checklists.find((row) => row.id === id && row.status === "issued");
