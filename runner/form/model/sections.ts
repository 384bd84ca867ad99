import {
  type Checklist,
  type Explanation,
  type Judgement,
  type PointDefinition,
  type PointKind,
  pointKind,
  pointsInOrder,
  sheetOrder,
} from "@roundbook/schemas";

/** One point as it is asked: in a repeat there is one for each member. */
export interface FormPoint {
  /** Name of its answer: the point's, or `point@member` in a repeat. */
  readonly id: string;
  /** What the point is called by on this form: "2.3". */
  readonly number: string;
  readonly kind: PointKind;
  /** Its question. */
  readonly title: string;
  /** What the member it is asked for is called, "Leaf left"; null outside repeats. */
  readonly member: string | null;
  readonly definition: PointDefinition;
}

export interface Section {
  readonly key: string;
  readonly number: string;
  readonly title: string;
  /** The group a member's section belongs to; null outside repeats. */
  readonly under: string | null;
  /** Its checks may be answered by one declaration. */
  readonly groupAnswer: boolean;
  readonly points: readonly FormPoint[];
}

export type Repeats = Judgement["repeats"];

/**
 * The groups of a checklist as numbered sections, and one for each member of a repeat; points
 * outside any group stand first.
 */
export const sectionsOf = (
  document: Checklist,
  ungrouped: string,
  repeats: Repeats,
): readonly Section[] => {
  const numbers = groupNumbers(document);
  return sheetOrder(document, repeats).map(({ group, member, points }) => {
    const number = String(numbers.get(group?.id) ?? 1);
    return {
      key: member ? `${group?.id}@${member.id}` : (group?.id ?? ""),
      number,
      title: member?.title ?? group?.title ?? ungrouped,
      under: member ? (group?.title ?? null) : null,
      groupAnswer: group?.groupAnswer ?? false,
      points: points.flatMap(({ name, point }, place) => {
        const definition = document.properties[point];
        if (definition === undefined) return [];
        return [
          {
            id: name,
            number: `${number}.${place + 1}`,
            kind: pointKind(definition),
            title: definition.title,
            member: member?.title ?? null,
            definition,
          },
        ];
      }),
    };
  });
};

/**
 * What groups are numbered by: their place in the checklist, so that 3.5 is 3.5 for everybody,
 * however many members a repeat before it has. Points outside any group come first.
 */
const groupNumbers = (document: Checklist): ReadonlyMap<string | undefined, number> =>
  new Map(
    pointsInOrder(document)
      .filter(({ points }) => points.length > 0)
      .map(({ group }, at) => [group?.id, at + 1]),
  );

/** Repeats whose members are not known, by the title of their group: they have no section yet. */
export const unknownRepeats = (
  document: Checklist,
  repeats: Repeats,
): readonly { readonly title: string; readonly why: Explanation }[] =>
  (document.groups ?? []).flatMap(({ id, title }) => {
    const why = Object.hasOwn(repeats, id) ? repeats[id]?.why : null;
    return why ? [{ title, why }] : [];
  });

/** Changes only when a section comes or goes, so that what is drawn of the others stays as it is. */
export const repeatsKey = (repeats: Repeats): string =>
  JSON.stringify(Object.entries(repeats).map(([id, { members }]) => [id, members]));
