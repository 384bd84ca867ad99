import { canonicalize } from "../log/canonical.ts";
import { nearest } from "../shared/nearest.ts";
import { at, type Problem, problem, type Result } from "../shared/problem.ts";
import type { Block } from "./block-schema.ts";
import { type MovedGroups, movedWording } from "./block-wording.ts";
import type { Checklist } from "./meta-schema.ts";

type Group = NonNullable<Checklist["groups"]>[number];
type Definitions = Readonly<Record<string, object>>;

/** The order of particulars is the draft's own affair. */
const sameDefinition = (one: object, other: object): boolean => {
  const [a, b] = [one, other].map((definition) => canonicalize({ ...definition, order: null }));
  return a === b;
};

/** Definitions of a block that the document has otherwise. */
const clashes = (taken: Definitions = {}, given: Definitions = {}): readonly string[] =>
  Object.entries(given).flatMap(([name, definition]) => {
    const known = Object.hasOwn(taken, name) ? taken[name] : undefined;
    return known === undefined || sameDefinition(known, definition) ? [] : [name];
  });

/** What is there already stays as it is and first. */
const merged = <T>(
  taken: Readonly<Record<string, T>> = {},
  given: Readonly<Record<string, T>> = {},
): Record<string, T> => ({ ...taken, ...given, ...taken });

/**
 * The groups a block brings: its loose points under its own title, then its groups, each without
 * the points that the draft has put into groups of its own.
 */
const groupsOf = (block: Block, placed: ReadonlySet<string>) => {
  const grouped = new Set((block.groups ?? []).flatMap(({ points }) => points));
  const loose = Object.keys(block.points).filter((point) => !grouped.has(point));
  const all = [
    { from: "title" as const, group: { id: block.name, title: block.title, points: loose } },
    ...(block.groups ?? []).map((group, from) => ({ from, group })),
  ];
  return all.flatMap(({ from, group }) => {
    const points = group.points.filter((point) => !placed.has(point));
    return points.length > 0 ? [{ from, group: { ...group, points } }] : [];
  });
};

const namesTaken = (doc: Checklist, block: Block, groups: readonly Group[]): readonly string[] => {
  const ids = [...(doc.groups ?? []), ...groups].map(({ id }) => id);
  return [
    ...Object.keys(block.points).filter((point) => Object.hasOwn(doc.properties, point)),
    ...clashes(doc.particulars, block.particulars),
    ...clashes(doc.values, block.values),
    ...new Set(groups.map(({ id }) => id).filter((id) => ids.indexOf(id) < ids.lastIndexOf(id))),
  ];
};

/** The document with one block taken in, or what keeps it out. */
const taken = (doc: Checklist, block: Block, pointer: string): Result<Checklist> => {
  const placed = new Set((doc.groups ?? []).flatMap(({ points }) => points));
  const brought = groupsOf(block, placed);
  const groups = brought.map(({ group }) => group);
  const names = namesTaken(doc, block, groups);
  const problems = names.map((name) =>
    problem(pointer, "block-name-taken", { block: block.name, name }),
  );
  const offset = doc.groups?.length ?? 0;
  const moved: MovedGroups = new Map(brought.map(({ from }, index) => [from, offset + index]));
  const wording = movedWording(doc.wording, block, moved);
  if (!wording) problems.push(problem(pointer, "block-not-right", { block: block.name }));
  if (!wording || problems.length > 0) return { ok: false, problems };
  const marked = Object.entries(block.points).map(
    ([name, point]) => [name, { ...point, block: block.name }] as const,
  );
  const value: Checklist = {
    ...doc,
    ...(block.particulars ? { particulars: merged(doc.particulars, block.particulars) } : {}),
    ...(block.values ? { values: merged(doc.values, block.values) } : {}),
    groups: [...(doc.groups ?? []), ...groups],
    properties: { ...doc.properties, ...Object.fromEntries(marked) },
    ...(block.wording ? { wording } : {}),
  };
  return { ok: true, value };
};

/**
 * Takes in the blocks that a draft includes, in order, behind what it has itself; their points
 * are marked with the block's name. A definition (particular, value) that is there already in the
 * same words is shared; any other name that is taken is a problem at the `include`. The outcome may
 * have outgrown the limits of a document, so it is parsed and linted like any other.
 * @param known names of all blocks, to suggest the one that was meant.
 */
export const resolveBlocks = (
  { include, ...draft }: Checklist,
  blockNamed: (name: string) => Block | undefined,
  known: readonly string[] = [],
): Result<Checklist> => {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  let doc: Checklist = draft;
  for (const [index, { block: name }] of (include ?? []).entries()) {
    const pointer = at("/include", index, "block");
    const block = blockNamed(name);
    if (!block) {
      problems.push(
        problem(pointer, "block-unknown", { block: name, nearest: nearest(name, known) }),
      );
    } else if (seen.has(name)) {
      problems.push(problem(pointer, "block-name-taken", { block: name, name }));
    } else if (block.name !== name) {
      problems.push(problem(pointer, "block-not-right", { block: name }));
    } else {
      const result = taken(doc, block, pointer);
      if (result.ok) doc = result.value;
      else problems.push(...result.problems);
    }
    seen.add(name);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: doc };
};
