import {
  answerName,
  type Checklist,
  type PointDefinition,
  type PointKind,
  pointKind,
  type RepeatDefinition,
} from "@roundbook/schemas";
import { pageOrder } from "./commands.ts";

/** A question that a cell of a file may answer: a point, in a repeat once for each member. */
export interface Answerable {
  /** The point's name, or `point@member`. */
  readonly name: string;
  readonly point: PointDefinition;
  readonly title: string;
}

/** No cell of a file is any of these. */
const NEVER: ReadonlySet<PointKind> = new Set(["photo", "signature", "sample", "calculated"]);
/** Members offered where only the asset says how many there are, and no most is given. */
const OFFERED = 12;

const membersOf = ({ each, members, count, atMost }: RepeatDefinition) => {
  if (members) return members;
  const most = atMost ?? (typeof count === "number" ? count : OFFERED);
  return Array.from({ length: most }, (_, at) => ({
    id: String(at + 1),
    title: `${each} ${at + 1}`,
  }));
};

/** In the order of the page. */
export const answerable = (document: Checklist): readonly Answerable[] =>
  pageOrder(document).flatMap(({ group, points }) => {
    const repeat = document.groups?.find(({ id }) => id === group)?.repeat;
    return points.flatMap((name): Answerable[] => {
      const point = document.properties[name];
      if (!point || NEVER.has(pointKind(point))) return [];
      if (!repeat) return [{ name, point, title: point.title }];
      return membersOf(repeat).map(({ id, title }) => ({
        name: answerName(name, id),
        point,
        title: `${point.title}, ${title}`,
      }));
    });
  });
