import type { ImportReport, Problem, RowProblem } from "@roundbook/schemas";

const PROBLEMS_SHOWN = 1000;

/** One fault of a row; `column` is the header of the cell, null when the row as a whole is at fault. */
export interface Fault {
  readonly column: string | null;
  readonly problem: Problem;
}

/** Counts for the report: it keeps the first thousand faults and counts the rest. */
export class Tally {
  rows = 0;
  newAssets = 0;
  newEntries = 0;
  already = 0;
  badRows = 0;
  readonly #problems: RowProblem[] = [];

  bad(row: number, faults: readonly Fault[]): void {
    if (row > 0) this.badRows += 1;
    for (const fault of faults)
      if (this.#problems.length < PROBLEMS_SHOWN) this.#problems.push({ row, ...fault });
  }

  report(trial: boolean): ImportReport {
    const { rows, newAssets, newEntries, already, badRows } = this;
    const problems = this.#problems.toSorted((a, b) => a.row - b.row);
    return { trial, rows, newAssets, newEntries, already, badRows, problems };
  }
}
