import { canonicalize, type PointDefinition, pointsInOrder } from "@roundbook/schemas";
import { f } from "../messages/facts.ts";
import type { DraftDocument } from "./draft-document.ts";
import { particularFacts, pointFacts, scoreFacts, valueFacts } from "./fact-words.ts";
import { limitSentence, pointNote } from "./limit-sentence.ts";
import { repeatWords, stopWords } from "./sequence-words.ts";

export type ChangeKind =
  | "title"
  | "cautions"
  | "particular"
  | "value"
  | "score"
  | "added"
  | "gone"
  | "kind"
  | "wording"
  | "limits"
  | "rest"
  | "repeat"
  | "stops"
  | "order";

/** One change in plain words: what it is about, and how it was and is. */
export interface Change {
  readonly kind: ChangeKind;
  readonly about: string;
  /** The point's name, where it is about one. */
  readonly point?: string;
  readonly was?: string;
  readonly is?: string;
}

const same = (a: unknown, b: unknown): boolean =>
  canonicalize(a ?? null) === canonicalize(b ?? null);

const without = (value: object, ...members: string[]): object =>
  Object.fromEntries(Object.entries(value).filter(([name]) => !members.includes(name)));

const order = (document: DraftDocument): string[] =>
  pointsInOrder(document).flatMap(({ points }) => [...points]);

type Describe<T> = (one: T) => readonly string[];

/** Members of a map that were added, changed or taken away. */
const mapChanges = <T extends { title?: string }>(
  kind: ChangeKind,
  before: Readonly<Record<string, T>> = {},
  after: Readonly<Record<string, T>> = {},
  [wordsBefore, wordsAfter]: readonly [Describe<T>, Describe<T>],
  ...ignored: string[]
): Change[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((name) => {
    const [was, is] = [before[name], after[name]];
    if (was && is && same(without(was, ...ignored), without(is, ...ignored))) return [];
    return [
      {
        kind,
        about: is?.title ?? was?.title ?? name,
        ...told(was ? wordsBefore(was) : [], is ? wordsAfter(is) : [], was, is),
      },
    ];
  });

/** What only one side says, told in its words. */
const told = (had: readonly string[], has: readonly string[], was: unknown, is: unknown) => {
  const only = (facts: readonly string[], others: readonly string[]) =>
    facts.filter((fact) => !others.includes(fact)).join("; ");
  return apart(was && only(had, has), is && only(has, had), was, is);
};

/** The text of the document itself where words do not tell the two sides apart. */
const apart = (was: unknown, is: unknown, before: unknown, after: unknown) => {
  if (was === is) return { was: canonicalize(before ?? null), is: canonicalize(after ?? null) };
  return {
    ...(typeof was === "string" && was !== "" ? { was } : {}),
    ...(typeof is === "string" && is !== "" ? { is } : {}),
  };
};

const limitWords = (document: DraftDocument, point: PointDefinition): string =>
  (point.limits ?? [])
    .map((limit) => {
      const words = limitSentence(document, point, limit);
      return limit.basis ? f("limit.because", { limit: words, basis: limit.basis }) : words;
    })
    .join(" ");

const pointChanges = (before: DraftDocument, after: DraftDocument, name: string): Change[] => {
  const was = before.properties[name];
  const is = after.properties[name];
  if (!is) return [{ kind: "gone", about: was?.title ?? name, point: name }];
  if (!was) return [{ kind: "added", about: is.title, point: name, is: pointNote(after, is) }];
  const changes: Change[] = [];
  const tell = (kind: ChangeKind, words: Pick<Change, "was" | "is"> = {}) =>
    changes.push({ kind, about: is.title, point: name, ...words });
  if (was.title !== is.title || was.description !== is.description) {
    const words = (point: PointDefinition) =>
      [point.title, point.description].filter(Boolean).join(". ");
    tell("wording", { was: words(was), is: words(is) });
  }
  if (was.$ref !== is.$ref) tell("kind");
  if (!same(was.limits, is.limits))
    tell("limits", apart(limitWords(before, was), limitWords(after, is), was.limits, is.limits));
  const rest = (point: PointDefinition) => without(point, "title", "description", "$ref", "limits");
  if (!same(rest(was), rest(is))) {
    tell("rest", told(pointFacts(before, was), pointFacts(after, is), rest(was), rest(is)));
  }
  return changes;
};

/** Every change between two documents: nothing that the hash covers goes unmentioned. */
export const differences = (before: DraftDocument, after: DraftDocument): Change[] => {
  const names = [...new Set([...Object.keys(before.properties), ...Object.keys(after.properties)])];
  const changes: Change[] = [
    ...(before.title === after.title
      ? []
      : [{ kind: "title" as const, about: after.title, was: before.title, is: after.title }]),
    ...(same(before.cautions, after.cautions)
      ? []
      : [
          {
            kind: "cautions" as const,
            about: after.title,
            was: (before.cautions ?? []).join(" "),
            is: (after.cautions ?? []).join(" "),
          },
        ]),
    ...mapChanges(
      "particular",
      before.particulars,
      after.particulars,
      [particularFacts, particularFacts],
      "order",
    ),
    ...mapChanges("value", before.values, after.values, [
      (value) => valueFacts(before, value),
      (value) => valueFacts(after, value),
    ]),
    ...mapChanges("score", before.scores, after.scores, [
      (score) => scoreFacts(before, score),
      (score) => scoreFacts(after, score),
    ]),
    ...names.flatMap((name) => pointChanges(before, after, name)),
  ];
  const kept = new Set(names.filter((name) => before.properties[name] && after.properties[name]));
  const stay = (document: DraftDocument) => order(document).filter((name) => kept.has(name));
  if (!same(before.stops, after.stops))
    changes.push({ kind: "stops", about: after.title, ...stopChange(before, after) });
  changes.push(...repeatChanges(before, after));
  const rest = ["title", "cautions", "particulars", "values", "scores", "properties", "$defs"];
  rest.push("stops", "patternProperties", "propertyNames");
  const regrouped = !same(without(before, ...rest, "groups"), without(after, ...rest, "groups"));
  if (!same(stay(before), stay(after)) || !sameGroups(before, after) || regrouped)
    changes.push({ kind: "order", about: after.title });
  return changes;
};

const stopChange = (before: DraftDocument, after: DraftDocument) =>
  told(stopWords(before), stopWords(after), before.stops ?? [], after.stops ?? []);

const repeatChanges = (before: DraftDocument, after: DraftDocument): Change[] =>
  (after.groups ?? []).flatMap(({ id, title, repeat }) => {
    const was = before.groups?.find((group) => group.id === id);
    if (!was || same(was.repeat, repeat)) return [];
    const words = [repeatWords(before, was.repeat), repeatWords(after, repeat)] as const;
    return [{ kind: "repeat" as const, about: title, ...apart(...words, was.repeat, repeat) }];
  });

const sameGroups = (before: DraftDocument, after: DraftDocument): boolean => {
  const heads = (document: DraftDocument) =>
    (document.groups ?? []).map(({ id, title, groupAnswer = false }) => [id, title, groupAnswer]);
  return same(heads(before), heads(after));
};
