import { at } from "../shared/problem.ts";
import { ANSWER_DEFS } from "./answer-types.ts";
import { pointKind } from "./guards.ts";
import type { Checklist } from "./meta-schema.ts";
import { numberParticulars } from "./particulars-in-order.ts";
import { pointsInOrder } from "./points-in-order.ts";
import { repeatPattern } from "./repeat-patterns.ts";
import { repeatsByPoint } from "./repeats.ts";

type Group = NonNullable<Checklist["groups"]>[number];
type Wording = NonNullable<Checklist["wording"]>;

/** Loose points as a first group: the members of a JSON object keep no order, a list does. */
const looseGroup = (doc: Checklist): Group | null => {
  const loose = pointsInOrder(doc).find(({ group }) => group === null);
  if (!loose) return null;
  const taken = new Set((doc.groups ?? []).map(({ id }) => id));
  let id = "points";
  for (let number = 2; taken.has(id); number += 1) id = `points_${number}`;
  return { id, title: doc.title, points: [...loose.points] };
};

/** Wording goes by place: a group put first moves the others, and is worded as the title is. */
const wordingMoved = (wording: Wording): Wording =>
  Object.fromEntries(
    Object.entries(wording).map(([language, texts]) => {
      const moved = Object.entries(texts).map(([pointer, text]) => [
        pointer.replace(/^\/groups\/(\d{1,3})\//, (_, index) => `/groups/${Number(index) + 1}/`),
        text,
      ]);
      const title = Object.hasOwn(texts, "/title") ? texts["/title"] : undefined;
      return [
        language,
        Object.fromEntries([...(title ? [["/groups/0/title", title]] : []), ...moved]),
      ];
    }),
  );

const withEveryPointGrouped = (doc: Checklist): Checklist => {
  const loose = looseGroup(doc);
  const groups = doc.groups ?? [];
  if (!loose) return { ...doc, groups: [...groups] };
  return {
    ...doc,
    groups: [loose, ...groups],
    ...(doc.wording ? { wording: wordingMoved(doc.wording) } : {}),
  };
};

/** Answers of repeats by name, and that none of their points is answered without its member. */
const repeatKeywords = (doc: Checklist) => {
  const repeated = [...repeatsByPoint(doc)].filter(([point]) =>
    Object.hasOwn(doc.properties, point),
  );
  if (repeated.length === 0) return {};
  return {
    patternProperties: Object.fromEntries(
      repeated.map(([point, { repeat }]) => [
        repeatPattern(point, repeat),
        { $ref: at("#/properties", point) },
      ]),
    ),
    propertyNames: { not: { enum: repeated.map(([point]) => point) } },
  };
};

/**
 * The document as it is issued. Exactly the answer types its points use stand under `$defs` and
 * the names of answers in repeats under `patternProperties`, so that it validates answers by
 * itself; the order of points, groups and particulars is written down, so that it survives the
 * canonical form. Idempotent; the canonical hash of the outcome is the checklist's identity.
 * @throws Error for a draft that still includes blocks: `resolveBlocks` comes first.
 */
export const issueDocument = (doc: Checklist): Checklist => {
  if (doc.include && doc.include.length > 0)
    throw new Error("blocks are resolved before a checklist is issued");
  const kinds = new Set(Object.values(doc.properties).map(pointKind));
  const names = [...kinds, "absent", "writtenText"] as const;
  const $defs = Object.fromEntries(names.map((name) => [name, ANSWER_DEFS[name]]));
  const {
    include: _include,
    patternProperties: _patterns,
    propertyNames: _names,
    ...grouped
  } = withEveryPointGrouped(doc);
  return {
    ...grouped,
    ...repeatKeywords(grouped),
    ...(doc.particulars ? { particulars: numberParticulars(doc.particulars) } : {}),
    $defs,
  };
};
