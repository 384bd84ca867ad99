import { at, type Problem, problem } from "../../shared/problem.ts";
import { tableBudget, tableProblems } from "../../tables/analyse.ts";
import type { TableInput } from "../../tables/domain.ts";
import { pointKind } from "../guards.ts";
import type { Checklist } from "../meta-schema.ts";
import type { ChecklistNames } from "../names.ts";

/** What the definition behind a name says of the numbers and values it can be. */
const domainOf = (doc: Checklist, input: string): TableInput => {
  const [kind, name = ""] = input.split(".");
  if (kind === "asset" && Object.hasOwn(doc.particulars ?? {}, name)) {
    const { type, enum: listed, minimum, maximum } = doc.particulars?.[name] ?? {};
    return { integer: type === "integer", listed, minimum, maximum };
  }
  const point = Object.hasOwn(doc.properties, name) ? doc.properties[name] : undefined;
  if (kind !== "answers" || !point) return {};
  switch (pointKind(point)) {
    case "graded":
      return { integer: true, minimum: point.minimum, maximum: point.maximum };
    case "count":
      return { integer: true, minimum: point.minimum ?? 0, maximum: point.maximum };
    default:
      return {};
  }
};

/** Decision tables: shape, cell types, holes, overlaps and rows out of reach. */
export const lintTables = (doc: Checklist, names: ChecklistNames): readonly Problem[] => {
  const budget = tableBudget();
  return Object.entries(doc.values ?? {}).flatMap(([name, { table }]) => {
    if (!table) return [];
    const pointer = at("/values", name, "table");
    const inputs = table.inputs.map((input, index) => {
      const known = names.types.get(input.trim());
      const compiled = names.compiled.get(at(pointer, "inputs", index))?.type;
      const domain = domainOf(doc, input.trim());
      return {
        ...domain,
        type: known?.type ?? compiled,
        listed: domain.listed ?? known?.options,
      };
    });
    return tableProblems(table, inputs, budget).map((found) =>
      problem(`${pointer}${found.pointer}`, found.code, found.params),
    );
  });
};
