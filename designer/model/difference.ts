import {
  issueDocument,
  type PointDefinition,
  particularsInOrder,
  pointKind,
} from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import { apart, same, told, type WasAndIs } from "./change-words.ts";
import { languageChanges } from "./difference-languages.ts";
import type { DraftDocument } from "./draft-document.ts";
import { particularFacts, scoreFacts, wholeValueFacts } from "./fact-words.ts";
import { limitSentence } from "./limit-sentence.ts";
import { ASPECTS, type Aspect, aspectFacts, membersOf, pointFacts } from "./point-facts.ts";
import { repeatWords, stopWords } from "./sequence-words.ts";

export type ChangeKind =
  | "title"
  | "description"
  | "language"
  | "languages"
  | "minutes"
  | "cautions"
  | "include"
  | "particular"
  | "particular-order"
  | "value"
  | "score"
  | "added"
  | "gone"
  | "kind"
  | "wording"
  | "limits"
  | Aspect
  | "repeat"
  | "stops"
  | "group"
  | "group-added"
  | "group-gone"
  | "group-answer"
  | "group-order"
  | "order"
  | "written";

/** One change in plain words: what it is about, and how it was and is. */
export interface Change extends WasAndIs {
  readonly kind: ChangeKind;
  readonly about: string;
  /** The point's name, where it is about one. */
  readonly point?: string;
}

type Group = NonNullable<DraftDocument["groups"]>[number];
type Compare = (before: DraftDocument, after: DraftDocument) => readonly Change[];
type Describe<T> = (document: DraftDocument, one: T) => readonly string[];

/** A member of the document that is one thing: told as a whole, in lines. */
const member =
  <K extends ChangeKind & keyof DraftDocument>(
    kind: K,
    lines: (document: DraftDocument) => readonly (string | undefined)[],
  ): Compare =>
  (before, after) => {
    if (same(before[kind], after[kind])) return [];
    const words = [before, after].map((one) =>
      lines(one).filter((line): line is string => line !== undefined),
    );
    const [had = [], has = []] = words;
    return [{ kind, about: after.title, ...told(had, has, before[kind], after[kind]) }];
  };

/** Definitions by name that were added, changed or taken away. */
const definitions =
  <T extends { title?: string }>(
    kind: ChangeKind,
    of: (document: DraftDocument) => Readonly<Record<string, T>>,
    describe: Describe<T>,
  ): Compare =>
  (before, after) => {
    const [had, has] = [of(before), of(after)];
    return [...new Set([...Object.keys(had), ...Object.keys(has)])].flatMap((name) => {
      const [was, is] = [had[name], has[name]];
      if (same(was, is)) return [];
      const words = told(was ? describe(before, was) : [], is ? describe(after, is) : [], was, is);
      return [{ kind, about: is?.title ?? was?.title ?? name, ...words }];
    });
  };

/** Where a particular stands is told of all of them at once. */
const unordered = ({ particulars = {} }: DraftDocument) =>
  Object.fromEntries(
    Object.entries(particulars).map(([name, { order: _, ...definition }]) => [name, definition]),
  );

const inOrder = ({ particulars = {} }: DraftDocument, beside: DraftDocument) =>
  particularsInOrder(particulars).flatMap(([name, { title }]) =>
    Object.hasOwn(beside.particulars ?? {}, name) ? [{ name, title }] : [],
  );

const particularOrder: Compare = (before, after) => {
  const [was, is] = [inOrder(before, after), inOrder(after, before)];
  const names = (list: typeof was) => list.map(({ name }) => name);
  if (same(names(was), names(is))) return [];
  const titles = (list: typeof was) => list.map(({ title }) => title).join(", ");
  const words = apart(titles(was), titles(is), names(was), names(is));
  return [{ kind: "particular-order", about: after.title, ...words }];
};

const limitWords = (document: DraftDocument, point: PointDefinition): string =>
  (point.limits ?? [])
    .map((limit) => {
      const words = limitSentence(document, point, limit);
      return limit.basis ? f("limit.because", { limit: words, basis: limit.basis }) : words;
    })
    .join(" ");

/** All that a point says, as it is told of one that comes. */
const allWords = (document: DraftDocument, point: PointDefinition): string =>
  [
    ...(point.description ? [point.description] : []),
    e(`kind.${pointKind(point)}`),
    ...pointFacts(document, point),
    ...(point.limits ? [limitWords(document, point)] : []),
  ].join("; ");

const ofPoint = (before: DraftDocument, after: DraftDocument, name: string): Change[] => {
  const was = before.properties[name];
  const is = after.properties[name];
  if (!is) return [{ kind: "gone", about: was?.title ?? name, point: name }];
  if (!was) return [{ kind: "added", about: is.title, point: name, is: allWords(after, is) }];
  const changes: Change[] = [];
  const tell = (kind: ChangeKind, words: WasAndIs) =>
    changes.push({ kind, about: is.title, point: name, ...words });
  const asked = ({ title, description = "" }: PointDefinition) => [title, description];
  if (!same(asked(was), asked(is))) {
    const words = (point: PointDefinition) => asked(point).filter(Boolean).join(". ");
    tell("wording", apart(words(was), words(is), asked(was), asked(is)));
  }
  if (was.$ref !== is.$ref) {
    const kinds = [was, is].map((point) => e(`kind.${pointKind(point)}`));
    tell("kind", apart(kinds[0], kinds[1], was.$ref, is.$ref));
  }
  if (!same(was.limits, is.limits))
    tell("limits", apart(limitWords(before, was), limitWords(after, is), was.limits, is.limits));
  for (const aspect of ASPECTS) {
    const [had, has] = [membersOf(aspect, was), membersOf(aspect, is)];
    if (same(had, has)) continue;
    const lines = [aspectFacts(before, was, aspect), aspectFacts(after, is, aspect)] as const;
    tell(aspect, told(...lines, had, has));
  }
  return changes;
};

const points: Compare = (before, after) =>
  [...new Set([...Object.keys(before.properties), ...Object.keys(after.properties)])].flatMap(
    (name) => ofPoint(before, after, name),
  );

const groupsOf = ({ groups = [] }: DraftDocument): readonly Group[] => groups;

/** How a group is answered, as it is told of one that comes. */
const groupFacts = (document: DraftDocument, { groupAnswer, repeat }: Group): string[] => [
  ...(groupAnswer ? [f("change.answer-group")] : []),
  ...(repeat ? [repeatWords(document, repeat)] : []),
];

const groups: Compare = (before, after) => {
  const gone = groupsOf(before).filter(
    ({ id }) => !groupsOf(after).some((group) => group.id === id),
  );
  const changed = groupsOf(after).flatMap((is): Change[] => {
    const was = groupsOf(before).find(({ id }) => id === is.id);
    const about = is.title;
    if (!was) {
      const words = groupFacts(after, is).join("; ");
      return [{ kind: "group-added", about, ...(words === "" ? {} : { is: words }) }];
    }
    const answer = ({ groupAnswer }: Group) =>
      f(groupAnswer ? "change.answer-group" : "change.answer-each");
    const repeats = [repeatWords(before, was.repeat), repeatWords(after, is.repeat)] as const;
    return [
      ...(was.title === is.title
        ? []
        : [{ kind: "group" as const, about, was: was.title, is: is.title }]),
      ...(same(was.groupAnswer, is.groupAnswer)
        ? []
        : [
            {
              kind: "group-answer" as const,
              about,
              ...apart(answer(was), answer(is), was.groupAnswer, is.groupAnswer),
            },
          ]),
      ...(same(was.repeat, is.repeat)
        ? []
        : [{ kind: "repeat" as const, about, ...apart(...repeats, was.repeat, is.repeat) }]),
    ];
  });
  return [...gone.map(({ title }) => ({ kind: "group-gone" as const, about: title })), ...changed];
};

/** The order of what stays: groups among themselves, and points within and across them. */
const orders: Compare = (before, after) => {
  const about = after.title;
  const shared = (document: DraftDocument, beside: DraftDocument) =>
    groupsOf(document).filter(({ id }) => groupsOf(beside).some((group) => group.id === id));
  const [had, has] = [shared(before, after), shared(after, before)];
  const ids = (list: readonly Group[]) => list.map(({ id }) => id);
  const titles = (list: readonly Group[]) => list.map(({ title }) => title).join(", ");
  const stays = (name: string) =>
    Object.hasOwn(before.properties, name) && Object.hasOwn(after.properties, name);
  const kept = (document: DraftDocument) =>
    groupsOf(document).map(({ id, title, points }) => ({
      id,
      title,
      points: points.filter(stays),
    }));
  const pointsIn = (document: DraftDocument, id: string) =>
    kept(document).find((group) => group.id === id)?.points ?? [];
  const otherwise = (document: DraftDocument, beside: DraftDocument) =>
    kept(document)
      .filter(({ id, points }) => !same(points, pointsIn(beside, id)))
      .map(({ title, points }) => {
        const names = points.map((name) => document.properties[name]?.title ?? name).join(", ");
        return f("change.group", { group: title, points: names || f("change.empty") });
      });
  const [was, is] = [otherwise(before, after), otherwise(after, before)];
  return [
    ...(same(ids(had), ids(has))
      ? []
      : [
          {
            kind: "group-order" as const,
            about,
            ...apart(titles(had), titles(has), ids(had), ids(has)),
          },
        ]),
    ...(was.length + is.length === 0
      ? []
      : [{ kind: "order" as const, about, ...told(was, is, kept(before), kept(after)) }]),
  ];
};

const minutesWords = ({ minutes }: DraftDocument) =>
  minutes === undefined ? undefined : f("change.minutes", { minutes });

const COMPARED: readonly Compare[] = [
  member("title", ({ title }) => [title]),
  member("description", ({ description }) => [description]),
  member("minutes", (document) => [minutesWords(document)]),
  member("language", ({ language }) => [language]),
  member("cautions", ({ cautions = [] }) => cautions),
  definitions("particular", unordered, (_, one) => particularFacts(one)),
  particularOrder,
  definitions("value", ({ values = {} }) => values, wholeValueFacts),
  definitions("score", ({ scores = {} }) => scores, scoreFacts),
  points,
  member("stops", stopWords),
  groups,
  orders,
  languageChanges,
];

const includes = member("include", ({ include = [] }) => include.map(({ block }) => block));

/** As it would be issued; blocks that are not taken in yet are told by name. */
const asIssued = ({ include: _, ...document }: DraftDocument): DraftDocument =>
  issueDocument(document);

/** What was issued already stays as it was written down then. */
const issued = (document: DraftDocument): DraftDocument =>
  document.$defs ? document : asIssued(document);

/**
 * Every change between what was issued and what would be issued: nothing that the hash covers goes
 * unmentioned, and what it does not cover is no change.
 */
export const differences = (before: DraftDocument, after: DraftDocument): Change[] => {
  const [was, is] = [issued(before), asIssued(after)];
  const changes = [...COMPARED.flatMap((compare) => compare(was, is)), ...includes(before, after)];
  // What the program writes by itself, or a list that is there and empty: it says the same.
  const writtenAnew = before.$defs !== undefined && !same(before, asIssued(before));
  if (writtenAnew || (changes.length === 0 && !same(was, is)))
    return [...changes, { kind: "written", about: after.title }];
  return changes;
};
