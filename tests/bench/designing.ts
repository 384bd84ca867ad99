import {
  lintChecklist,
  type Problem,
  type TableDefinition,
  tableProblems,
} from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { createPatternEngine } from "@roundbook/schemas/patterns";
import { parseChecklist } from "@roundbook/schemas/validate";
import { medianOf } from "./measure.ts";
import type { Row } from "./row.ts";
import { TABLE_OF_RANGES, TABLE_WITH_A_HOLE, TWO_HUNDRED_POINTS } from "./two-hundred.ts";

const MOST_LOAD_MS = 150;
const MOST_TABLE_MS = 1000;
const TURNS = 15;

const row = (what: string, ms: number, most: number, said: string): Row => ({
  what,
  against: "",
  ratio: null,
  figure: `${ms.toFixed(1)} ms, ${said}`,
  target: `≤ ${most} ms`,
  met: ms <= most,
});

const loading = (): Row => {
  const text = JSON.stringify(TWO_HUNDRED_POINTS);
  const [formulas, patterns] = [createFormulaEngine(), createPatternEngine()];
  let found: readonly Problem[] = [];
  const ms = medianOf(TURNS, () => {
    const parsed = parseChecklist(JSON.parse(text));
    if (!parsed.ok) throw new Error("the bench's checklist is well formed");
    found = lintChecklist(parsed.value, formulas, patterns);
  });
  if (found.length > 0) throw new Error(`the bench's checklist has no fault: ${found[0]?.code}`);
  const said = `${(text.length / 1000).toFixed(0)} kB of JSON`;
  return row("load and lint 200 points", ms, MOST_LOAD_MS, said);
};

const INPUTS: Parameters<typeof tableProblems>[1] = [
  { type: "number", minimum: 0 },
  { type: "number", minimum: 0 },
  { type: "string", listed: ["I", "II", "III", "IV"] },
  { type: "string", listed: ["dry", "wet"] },
];

const analysing = (what: string, table: TableDefinition): Row => {
  let found: readonly Problem[] = [];
  const ms = medianOf(TURNS, () => {
    found = tableProblems(table, INPUTS);
  });
  if (found.length === 0 || found.some(({ code }) => code === "table-too-large-to-analyse"))
    throw new Error("the bench's table has faults, and they are found");
  return row(what, ms, MOST_TABLE_MS, `${found.length} faults found`);
};

/** What a manager waits for at each change: the checklist read and gone through. */
export const benchDesigning = (): Row[] => [
  loading(),
  analysing("holes of 200 rules of 4 inputs", TABLE_WITH_A_HOLE),
  analysing("holes of 200 ranges that cross", TABLE_OF_RANGES),
];
