import {
  type Checklist,
  type PointDefinition,
  type PointKind,
  pointKind,
  pointsInOrder,
} from "@roundbook/schemas";

export interface FormPoint {
  readonly id: string;
  /** What the point is called by on this form: "2.3". */
  readonly number: string;
  readonly kind: PointKind;
  readonly definition: PointDefinition;
}

export interface Section {
  readonly key: string;
  readonly number: string;
  readonly title: string;
  /** Its checks may be answered by one declaration. */
  readonly groupAnswer: boolean;
  readonly points: readonly FormPoint[];
}

/** The groups of a checklist as numbered sections; points outside any group stand first. */
export function sectionsOf(document: Checklist, ungrouped: string): readonly Section[] {
  return pointsInOrder(document)
    .filter(({ points }) => points.length > 0)
    .map(({ group, points }, index) => {
      const number = String(index + 1);
      return {
        key: group?.id ?? "",
        number,
        title: group?.title ?? ungrouped,
        groupAnswer: group?.groupAnswer ?? false,
        points: points.flatMap((id, place) => {
          const definition = document.properties[id];
          if (definition === undefined) return [];
          const kind = pointKind(definition);
          return [{ id, number: `${number}.${place + 1}`, kind, definition }];
        }),
      };
    });
}
