import { at } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

/** Texts in other languages: by language tag, then by JSON Pointer of the text they stand for. */
type Wording = NonNullable<DraftDocument["wording"]>;
type Branch = Readonly<Record<string, unknown>>;

const isBranch = (value: unknown): value is Branch => typeof value === "object" && value !== null;

/** The steps of a JSON Pointer. */
export const stepsOf = (pointer: string): readonly string[] =>
  pointer
    .split("/")
    .slice(1)
    .map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));

const child = (part: unknown, step: string): unknown =>
  isBranch(part) && Object.hasOwn(part, step) ? part[step] : undefined;

const leadsTo = (document: DraftDocument, steps: readonly string[]): unknown =>
  steps.reduce<unknown>(child, document);

/** What a member of a list is known by, wherever it stands: its id, its value, or its words. */
const keyOf = (one: unknown): unknown => {
  if (!isBranch(one)) return one;
  return Object.hasOwn(one, "id") ? one.id : one.const;
};

/** The words of a member that has no key: a limit, a band, a rule. */
const wordsOf = (one: unknown): string =>
  isBranch(one) ? JSON.stringify([one.title, one.say, one.basis]) : "";

const NO_WORDS = wordsOf({});

/**
 * Where the members of a list went. Members with a key go by it. The others are the same object, or
 * say the same, or are the only one left on both sides: that one was changed.
 */
const placesOf = (was: readonly unknown[], is: readonly unknown[]): ReadonlyMap<number, number> => {
  const places = new Map<number, number>();
  const taken = new Set<number>();
  const pair = (same: (before: unknown, after: unknown) => boolean) =>
    was.forEach((before, from) => {
      if (places.has(from)) return;
      const to = is.findIndex((after, index) => !taken.has(index) && same(before, after));
      if (to < 0) return;
      places.set(from, to);
      taken.add(to);
    });
  if ([...was, ...is].some((one) => keyOf(one) !== undefined)) {
    pair((before, after) => keyOf(before) !== undefined && keyOf(before) === keyOf(after));
    return places;
  }
  pair((before, after) => before === after);
  pair((before, after) => wordsOf(before) !== NO_WORDS && wordsOf(before) === wordsOf(after));
  if (was.length - places.size === 1 && is.length - taken.size === 1) pair(() => true);
  return places;
};

type Places = (was: readonly unknown[], is: readonly unknown[]) => ReadonlyMap<number, number>;

/** Each list is gone through once, however many of its texts are worded. */
const remembered = (): Places => {
  const known = new Map<unknown, ReadonlyMap<number, number>>();
  return (was, is) => {
    const places = known.get(was) ?? placesOf(was, is);
    known.set(was, places);
    return places;
  };
};

/** Of a point that asks for another kind of answer only the question itself stays. */
const QUESTION: ReadonlySet<string> = new Set(["title", "description"]);
const asksOtherwise = (was: unknown, is: unknown): boolean =>
  child(was, "$ref") !== child(is, "$ref");

/** Where a text stands now; undefined when it is no more. */
const placeNow = (
  before: DraftDocument,
  after: DraftDocument,
  steps: readonly string[],
  places: Places,
): string | undefined => {
  let [was, is]: [unknown, unknown] = [before, after];
  let pointer = "";
  for (const [depth, step] of steps.entries()) {
    const asked = depth === 2 && steps[0] === "properties";
    if (asked && !QUESTION.has(step) && asksOtherwise(was, is)) return undefined;
    const listed = Array.isArray(was) && Array.isArray(is);
    const next = listed ? places(was as unknown[], is as unknown[]).get(Number(step)) : step;
    if (next === undefined) return undefined;
    [was, is] = [child(was, step), child(is, String(next))];
    pointer += at("", next);
  }
  return typeof is === "string" ? pointer : undefined;
};

/** What decides the places of groups that blocks bring. */
const grouping = ({ groups = [], include }: DraftDocument): string =>
  JSON.stringify([groups.map(({ points }) => points), include]);

/**
 * Whether wording of what is no text of the draft itself stays: a block's texts keep their names,
 * and their groups their place while the draft's own stay. It never comes to speak for a text
 * that is new.
 */
const staysUnknown = (before: DraftDocument, after: DraftDocument, steps: readonly string[]) => {
  if (typeof leadsTo(after, steps) === "string") return false;
  const ofBlock = before.include !== undefined && steps[0] === "groups";
  return !ofBlock || grouping(before) === grouping(after);
};

/**
 * The changed document with its wording where the worded texts stand now: it is addressed by place,
 * and places move. A text that is gone takes its wording with it. A command that changed the wording
 * itself, like a document that was pasted, is left as it is.
 */
export const followWording = (before: DraftDocument, after: DraftDocument): DraftDocument => {
  const { wording } = before;
  if (before === after || !wording || after.wording !== wording) return after;
  const places = remembered();
  let moved = false;
  const follow = ([pointer, text]: [string, string]): [string, string][] => {
    const steps = stepsOf(pointer);
    const known = typeof leadsTo(before, steps) === "string";
    const stays = !known && staysUnknown(before, after, steps) ? pointer : undefined;
    const now = known ? placeNow(before, after, steps, places) : stays;
    moved ||= now !== pointer;
    return now === undefined ? [] : [[now, text]];
  };
  const next: Wording = Object.fromEntries(
    Object.entries(wording).map(([language, texts]) => [
      language,
      Object.fromEntries(Object.entries(texts).flatMap(follow)),
    ]),
  );
  return moved ? { ...after, wording: next } : after;
};

/**
 * The document with each wording put to the places a command names, none for one that goes: for
 * what a command itself knows best.
 */
export const withWordingAt = (
  document: DraftDocument,
  placesFor: (pointer: string) => readonly string[],
): DraftDocument => {
  if (!document.wording) return document;
  const put = (texts: Readonly<Record<string, string>>) =>
    Object.fromEntries(
      Object.entries(texts).flatMap(([pointer, text]) =>
        placesFor(pointer).map((place) => [place, text]),
      ),
    );
  return {
    ...document,
    wording: Object.fromEntries(
      Object.entries(document.wording).map(([language, texts]) => [language, put(texts)]),
    ),
  };
};
