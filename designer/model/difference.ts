import { canonicalize, pointsInOrder } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";
import { limitSentence } from "./limit-sentence.ts";

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
  | "order";

/** One change in plain words: what it is about, and how it was and is. */
export interface Change {
  readonly kind: ChangeKind;
  readonly about: string;
  readonly was?: string;
  readonly is?: string;
}

const same = (a: unknown, b: unknown): boolean =>
  canonicalize(a ?? null) === canonicalize(b ?? null);

const without = (value: object, ...members: string[]): object =>
  Object.fromEntries(Object.entries(value).filter(([name]) => !members.includes(name)));

const order = (document: DraftDocument): string[] =>
  pointsInOrder(document).flatMap(({ points }) => [...points]);

/** Members of a map that were added, changed or taken away. */
const mapChanges = (
  kind: ChangeKind,
  before: Readonly<Record<string, { title?: string }>> = {},
  after: Readonly<Record<string, { title?: string }>> = {},
  ...ignored: string[]
): Change[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((name) => {
    const [was, is] = [before[name], after[name]];
    if (was && is && same(without(was, ...ignored), without(is, ...ignored))) return [];
    return [
      {
        kind,
        about: is?.title ?? was?.title ?? name,
        was: was && describe(without(was, "title", ...ignored)),
        is: is && describe(without(is, "title", ...ignored)),
      },
    ];
  });

const describe = (value: object): string =>
  Object.entries(value)
    .map(([name, one]) => `${name} ${typeof one === "object" ? JSON.stringify(one) : one}`)
    .join(", ");

const pointChanges = (before: DraftDocument, after: DraftDocument, name: string): Change[] => {
  const was = before.properties[name];
  const is = after.properties[name];
  if (!is) return [{ kind: "gone", about: was?.title ?? name }];
  if (!was) return [{ kind: "added", about: is.title }];
  const changes: Change[] = [];
  if (was.title !== is.title || was.description !== is.description)
    changes.push({
      kind: "wording",
      about: is.title,
      was: [was.title, was.description].filter(Boolean).join(". "),
      is: [is.title, is.description].filter(Boolean).join(". "),
    });
  if (was.$ref !== is.$ref) changes.push({ kind: "kind", about: is.title });
  if (!same(was.limits, is.limits)) {
    const words = (point: typeof was) =>
      (point.limits ?? [])
        .map((limit) => limitSentence(point, limit) + (limit.basis ? ` (${limit.basis})` : ""))
        .join(" ");
    changes.push({ kind: "limits", about: is.title, was: words(was), is: words(is) });
  }
  const ignored = ["title", "description", "$ref", "limits"];
  if (!same(without(was, ...ignored), without(is, ...ignored)))
    changes.push({
      kind: "rest",
      about: is.title,
      was: describe(without(was, ...ignored)),
      is: describe(without(is, ...ignored)),
    });
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
    ...mapChanges("particular", before.particulars, after.particulars, "order"),
    ...mapChanges("value", before.values, after.values),
    ...mapChanges("score", before.scores, after.scores),
    ...names.flatMap((name) => pointChanges(before, after, name)),
  ];
  const kept = new Set(names.filter((name) => before.properties[name] && after.properties[name]));
  const stay = (document: DraftDocument) => order(document).filter((name) => kept.has(name));
  const rest = ["title", "cautions", "particulars", "values", "scores", "properties", "$defs"];
  const regrouped = !same(without(before, ...rest, "groups"), without(after, ...rest, "groups"));
  if (!same(stay(before), stay(after)) || !sameGroups(before, after) || regrouped)
    changes.push({ kind: "order", about: after.title });
  return changes;
};

const sameGroups = (before: DraftDocument, after: DraftDocument): boolean => {
  const heads = (document: DraftDocument) =>
    (document.groups ?? []).map(({ id, title, groupAnswer = false }) => [id, title, groupAnswer]);
  return same(heads(before), heads(after));
};
