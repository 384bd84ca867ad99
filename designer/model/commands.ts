import type { PointDefinition, PointKind } from "@roundbook/schemas";
import { type DraftDocument, newPoint } from "./draft-document.ts";
import { withWordingAt } from "./follow-wording.ts";
import { nameFor } from "./names.ts";
import { withoutScored } from "./score-edit.ts";
import { withoutStopped } from "./stop-edit.ts";

/** Commands are pure: a document in, the changed document out, the same one when nothing changes. */
type Group = NonNullable<DraftDocument["groups"]>[number];

const groupsOf = (document: DraftDocument): readonly Group[] => document.groups ?? [];

const mapGroups = (document: DraftDocument, change: (group: Group) => Group): DraftDocument => ({
  ...document,
  groups: groupsOf(document).map(change),
});

export const setMember = <K extends "title" | "description" | "minutes" | "cautions">(
  document: DraftDocument,
  member: K,
  value: DraftDocument[K],
): DraftDocument => ({ ...document, [member]: value });

export const addGroup = (document: DraftDocument, title: string): DraftDocument => {
  const taken = new Set(groupsOf(document).map((group) => group.id));
  const id = nameFor(title, taken, "group");
  return { ...document, groups: [...groupsOf(document), { id, title, points: [] }] };
};

export const changeGroup = (
  document: DraftDocument,
  id: string,
  patch: Partial<Pick<Group, "title" | "groupAnswer">>,
): DraftDocument =>
  mapGroups(document, (group) => (group.id === id ? { ...group, ...patch } : group));

/** Moves a group with its points one place up or down. */
export const moveGroup = (
  document: DraftDocument,
  id: string,
  direction: -1 | 1,
): DraftDocument => {
  const groups = groupsOf(document);
  const index = groups.findIndex((group) => group.id === id);
  const other = index + direction;
  if (index < 0 || other < 0 || other >= groups.length) return document;
  return { ...document, groups: swapped(groups, index, other) };
};

/** Removes a group; its points stay, in no group. */
export const removeGroup = (document: DraftDocument, id: string): DraftDocument => ({
  ...withoutStopped(document, "groups", id),
  groups: groupsOf(document).filter((group) => group.id !== id),
});

/** Adds a point at the end of a group (or outside any) and says what it is called. */
export const addPoint = (
  document: DraftDocument,
  kind: PointKind,
  title: string,
  group: string | null,
  retired: ReadonlySet<string> = new Set(),
): { document: DraftDocument; name: string } => {
  const taken = new Set([...Object.keys(document.properties), ...retired]);
  const name = nameFor(title, taken, kind);
  const properties = { ...document.properties, [name]: newPoint(kind, title) };
  const added = { ...document, properties };
  return {
    name,
    document:
      group === null
        ? added
        : mapGroups(added, (one) =>
            one.id === group ? { ...one, points: [...one.points, name] } : one,
          ),
  };
};

export const changePoint = (
  document: DraftDocument,
  name: string,
  change: (point: PointDefinition) => PointDefinition,
): DraftDocument => {
  const point = Object.hasOwn(document.properties, name) ? document.properties[name] : undefined;
  if (!point) return document;
  const next = change(point);
  if (next === point) return document;
  return { ...document, properties: { ...document.properties, [name]: next } };
};

export const removePoint = (document: DraftDocument, name: string): DraftDocument => {
  const { [name]: gone, ...properties } = document.properties;
  if (!gone) return document;
  const scores = Object.fromEntries(
    Object.entries(document.scores ?? {}).map(([id, score]) => [id, withoutScored(score, name)]),
  );
  return {
    ...mapGroups({ ...withoutStopped(document, "points", name), properties }, (group) => ({
      ...group,
      points: group.points.filter((point) => point !== name),
    })),
    ...(document.scores ? { scores } : {}),
  };
};

/** A copy says in other languages what the first one does. */
const wordedToo = (document: DraftDocument, name: string, copy: string): DraftDocument => {
  const first = `/properties/${name}/`;
  return withWordingAt(document, (pointer) =>
    pointer.startsWith(first)
      ? [pointer, `/properties/${copy}/${pointer.slice(first.length)}`]
      : [pointer],
  );
};

export const duplicatePoint = (
  document: DraftDocument,
  name: string,
  retired: ReadonlySet<string> = new Set(),
): { document: DraftDocument; name: string } => {
  const point = document.properties[name];
  if (!point) return { document, name };
  const taken = new Set([...Object.keys(document.properties), ...retired]);
  const copy = nameFor(point.title, taken, "point");
  const added = { ...document, properties: { ...document.properties, [copy]: point } };
  return {
    name: copy,
    document: mapGroups(wordedToo(added, name, copy), (group) => ({
      ...group,
      points: group.points.flatMap((one) => (one === name ? [one, copy] : [one])),
    })),
  };
};

/** Order of the page: points outside any group first, then group by group. */
export const pageOrder = (
  document: DraftDocument,
): readonly { group: string | null; points: readonly string[] }[] => {
  const grouped = new Set(groupsOf(document).flatMap((group) => group.points));
  const loose = Object.keys(document.properties).filter((name) => !grouped.has(name));
  return [
    ...(loose.length > 0 ? [{ group: null, points: loose }] : []),
    ...groupsOf(document).map((group) => ({ group: group.id, points: group.points })),
  ];
};

const swapped = <T>(list: readonly T[], index: number, other: number): T[] => {
  const copy = [...list];
  const [a, b] = [copy[index], copy[other]];
  if (a === undefined || b === undefined) return copy;
  copy[index] = b;
  copy[other] = a;
  return copy;
};

/** Moves a point one place up or down; past the end of its group it enters the next one. */
export const movePoint = (
  document: DraftDocument,
  name: string,
  direction: -1 | 1,
): DraftDocument => {
  const groups = groupsOf(document);
  const from = groups.findIndex((group) => group.points.includes(name));
  if (from < 0) return moveLoose(document, name, direction);
  const group = groups[from] as Group;
  const index = group.points.indexOf(name);
  const other = index + direction;
  if (other >= 0 && other < group.points.length) {
    return mapGroups(document, (one) =>
      one === group ? { ...one, points: swapped(one.points, index, other) } : one,
    );
  }
  const neighbour = groups[from + direction];
  if (!neighbour) return document;
  return mapGroups(document, (one) => {
    if (one === group) return { ...one, points: one.points.filter((point) => point !== name) };
    if (one !== neighbour) return one;
    return { ...one, points: direction > 0 ? [name, ...one.points] : [...one.points, name] };
  });
};

/** Outside any group the order is that of the properties themselves. */
const moveLoose = (document: DraftDocument, name: string, direction: -1 | 1): DraftDocument => {
  const grouped = new Set(groupsOf(document).flatMap((group) => group.points));
  const loose = Object.keys(document.properties).filter((one) => !grouped.has(one));
  const index = loose.indexOf(name);
  const other = index + direction;
  const first = groupsOf(document)[0];
  if (other === loose.length && first) {
    return mapGroups(document, (one) =>
      one === first ? { ...one, points: [name, ...one.points] } : one,
    );
  }
  if (index < 0 || other < 0 || other >= loose.length) return document;
  const order = [...swapped(loose, index, other), ...grouped];
  return {
    ...document,
    properties: Object.fromEntries(
      order.flatMap((one) => {
        const point = document.properties[one];
        return point ? [[one, point]] : [];
      }),
    ),
  };
};
