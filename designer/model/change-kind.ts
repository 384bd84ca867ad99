import { type PointKind, pointKind } from "@roundbook/schemas";
import { changePoint, removePoint } from "./commands.ts";
import { type DraftDocument, newPoint } from "./draft-document.ts";
import { withWordingAt } from "./follow-wording.ts";
import { nameFor } from "./names.ts";
import { renamedInStops } from "./stop-edit.ts";

/** The question goes on under its new name; what else was worded is gone with the old one. */
const wordedAs = (document: DraftDocument, name: string, next: string): DraftDocument => {
  const old = `/properties/${name}/`;
  return withWordingAt(document, (pointer) => {
    if (!pointer.startsWith(old)) return [pointer];
    const member = pointer.slice(old.length);
    return member === "title" || member === "description" ? [`/properties/${next}/${member}`] : [];
  });
};

/**
 * Lets a point ask for another kind of answer. Its question and when it is asked stay; limits go,
 * for they were about other answers. A point that was issued gets a new name: what was found under
 * the old one is never mixed with it.
 */
export const changeKind = (
  document: DraftDocument,
  name: string,
  kind: PointKind,
  retired: ReadonlySet<string> = new Set(),
): { document: DraftDocument; name: string } => {
  const point = document.properties[name];
  if (!point || pointKind(point) === kind) return { document, name };
  const { title, description, ask: { evidence: _, wait: __, ...ask } = {} } = point;
  const asked = kind === "calculated" || pointKind(point) === "calculated" ? {} : { ask };
  const made = { ...newPoint(kind, title), ...(description ? { description } : {}), ...asked };
  if (!retired.has(name)) {
    // Taken out of every score too: only grades are counted.
    const { scores } = removePoint(document, name);
    const changed = changePoint(document, name, () => made);
    return { document: scores ? { ...changed, scores } : changed, name };
  }
  const next = nameFor(title, new Set([...Object.keys(document.properties), ...retired]), kind);
  const properties = Object.fromEntries(
    Object.entries(document.properties).map(([key, one]) =>
      key === name ? [next, made] : [key, one],
    ),
  );
  const groups = document.groups?.map((group) => ({
    ...group,
    points: group.points.map((one) => (one === name ? next : one)),
  }));
  const { scores } = removePoint(document, name);
  return {
    name: next,
    document: {
      ...renamedInStops(wordedAs(document, name, next), name, next),
      properties,
      ...(groups && { groups }),
      ...(scores && { scores }),
    },
  };
};
