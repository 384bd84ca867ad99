import { at } from "../shared/problem.ts";
import type { Checklist, PointDefinition, ScoreDefinition } from "./meta-schema.ts";
import { particularsInOrder } from "./particulars-in-order.ts";
import { pointsInOrder } from "./points-in-order.ts";

/** A text of a checklist that can be said in another language, with its JSON Pointer. */
export interface TranslatableText {
  readonly pointer: string;
  readonly text: string;
}

type Texts = readonly TranslatableText[];

/** The members of an object that are texts, in the order asked for. */
const texts = (pointer: string, from: object, ...names: string[]): Texts =>
  names.flatMap((name) => {
    const text: unknown = Object.hasOwn(from, name) ? Reflect.get(from, name) : undefined;
    return typeof text === "string" ? [{ pointer: at(pointer, name), text }] : [];
  });

const ofList = (pointer: string, list: readonly object[] | undefined, ...names: string[]): Texts =>
  (list ?? []).flatMap((one, index) => texts(at(pointer, index), one, ...names));

const ofPoint = (pointer: string, point: PointDefinition): Texts => [
  ...texts(pointer, point, "title", "description"),
  ...ofList(at(pointer, "oneOf"), point.oneOf, "title"),
  ...ofList(at(pointer, "items", "oneOf"), point.items?.oneOf, "title"),
  ...ofList(at(pointer, "limits"), point.limits, "basis"),
];

const ofScore = (pointer: string, score: ScoreDefinition): Texts => [
  ...texts(pointer, score, "title", "basis"),
  ...ofList(at(pointer, "bands"), score.bands, "title", "basis"),
];

const ofGroups = (doc: Checklist): Texts => {
  const ordered = pointsInOrder(doc);
  const loose = ordered[0]?.group === null ? 1 : 0;
  return ordered.flatMap(({ group, points }, index) => {
    const pointer = at("/groups", index - loose);
    const repeat = at(pointer, "repeat");
    return [
      ...(group ? texts(pointer, group, "title") : []),
      ...(group?.repeat ? texts(repeat, group.repeat, "each") : []),
      ...ofList(at(repeat, "members"), group?.repeat?.members, "title"),
      ...points.flatMap((name) => {
        const point = doc.properties[name];
        return point ? ofPoint(at("/properties", name), point) : [];
      }),
    ];
  });
};

/**
 * Every text that can be said in another language, in the order of the sheet: title and cautions,
 * particulars, groups with their points, stops, scores, and the values behind the limits.
 */
export const translatableTexts = (doc: Checklist): Texts => [
  ...texts("", doc, "title", "description"),
  ...texts("/cautions", doc.cautions ?? [], ...(doc.cautions ?? []).map((_, index) => `${index}`)),
  ...particularsInOrder(doc.particulars ?? {}).flatMap(([name, particular]) =>
    texts(at("/particulars", name), particular, "title", "description"),
  ),
  ...ofGroups(doc),
  ...ofList("/stops", doc.stops, "say"),
  ...Object.entries(doc.scores ?? {}).flatMap(([name, score]) =>
    ofScore(at("/scores", name), score),
  ),
  ...Object.entries(doc.values ?? {}).flatMap(([name, value]) => [
    ...texts(at("/values", name), value, "title", "basis"),
    ...ofList(at("/values", name, "table", "rules"), value.table?.rules, "basis"),
  ]),
];
