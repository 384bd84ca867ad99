import { at, type Problem, problem } from "../../shared/problem.ts";
import { tableProblems } from "../../tables/analyse.ts";
import type { Checklist } from "../meta-schema.ts";
import type { ChecklistNames } from "../names.ts";

/** Decision tables: shape, cell types, holes and overlaps. */
export const lintTables = (doc: Checklist, names: ChecklistNames): readonly Problem[] =>
  Object.entries(doc.values ?? {}).flatMap(([name, { table }]) => {
    if (!table) return [];
    const pointer = at("/values", name, "table");
    const inputs = table.inputs.map((input, index) => {
      const type = names.types.get(input.trim())?.type;
      const options = names.types.get(input.trim())?.options;
      const compiled = names.compiled.get(at(pointer, "inputs", index))?.type;
      const particular = input.trim().startsWith("asset.")
        ? doc.particulars?.[input.trim().slice("asset.".length)]
        : undefined;
      return {
        type: type ?? compiled,
        listed: particular?.enum ?? options,
        minimum: particular?.minimum,
        maximum: particular?.maximum,
      };
    });
    return tableProblems(table, inputs).map((found) =>
      problem(`${pointer}${found.pointer}`, found.code, found.params),
    );
  });
