import { createFormulaEngine } from "../../../formulas/index.ts";
import { createPatternEngine } from "../../../patterns/index.ts";
import { at } from "../../../shared/problem.ts";
import { LEAVES_AND_SOCKETS } from "../../../testing/leaves-and-sockets.ts";
import { parseChecklist } from "../../../validate/index.ts";
import { lintChecklist } from "../../lint-checklist.ts";

const formulas = createFormulaEngine();
const patterns = createPatternEngine();

/** Problems of the checklist with some places set, or removed by undefined. */
export const lint = (changes: Readonly<Record<string, unknown>>) => {
  const copy = JSON.parse(JSON.stringify(LEAVES_AND_SOCKETS));
  for (const [pointer, value] of Object.entries(changes)) {
    const path = pointer.split("/").slice(1);
    const last = path.pop() ?? "";
    let part = copy;
    for (const token of path) part = part[token];
    if (value === undefined) delete part[last];
    else part[last] = value;
  }
  const parsed = parseChecklist(copy);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return lintChecklist(parsed.value, formulas, patterns);
};
export const point = (name: string, ...tokens: (string | number)[]) =>
  at("/properties", name, ...tokens);
export const limit = (name: string, ...tokens: (string | number)[]) =>
  point(name, "limits", 0, ...tokens);

/** The same as "pointer code". */
export const codes = (changes: Readonly<Record<string, unknown>>): readonly string[] =>
  lint(changes).map(({ pointer, code }) => `${pointer} ${code}`);
