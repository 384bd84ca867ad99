import { at } from "../shared/problem.ts";
import type { Block } from "./block-schema.ts";
import type { Checklist } from "./meta-schema.ts";

type Wording = NonNullable<Checklist["wording"]>;

/** Where the groups of a block come to stand; the block's title heads its loose points. */
export type MovedGroups = ReadonlyMap<number | "title", number>;

/** A place of a block in the document that includes it. */
type Moved = { readonly to: string } | "left-out" | "not-in-block";

const inDocument = (block: Block, groups: MovedGroups, pointer: string): Moved => {
  const group = (from: number | "title", rest: string): Moved => {
    const index = groups.get(from);
    return index === undefined ? "left-out" : { to: `${at("/groups", index)}${rest}` };
  };
  if (pointer === "/title") return group("title", "/title");
  const [, part, name = "", rest = ""] = /^\/([a-z]+)\/([^/]+)(\/.+)$/.exec(pointer) ?? [];
  switch (part) {
    case "points":
      return Object.hasOwn(block.points, name)
        ? { to: `${at("/properties", name)}${rest}` }
        : "not-in-block";
    case "particulars":
    case "values":
      return Object.hasOwn(block[part] ?? {}, name) ? { to: pointer } : "not-in-block";
    case "groups":
      return /^(0|[1-9]\d{0,2})$/.test(name) && Number(name) < (block.groups?.length ?? 0)
        ? group(Number(name), rest)
        : "not-in-block";
    default:
      return "not-in-block";
  }
};

/**
 * Wording of a document with that of a block behind it, its pointers led to where the block's texts
 * come to stand. What the document words itself stays. Undefined when the block words a place that
 * is not its own: led on, it would speak for the document's texts.
 */
export const movedWording = (
  own: Wording | undefined,
  block: Block,
  groups: MovedGroups,
): Wording | undefined => {
  const wording = new Map(Object.entries(own ?? {}));
  for (const [language, texts] of Object.entries(block.wording ?? {})) {
    const moved: (readonly [string, string])[] = [];
    for (const [pointer, text] of Object.entries(texts)) {
      const place = inDocument(block, groups, pointer);
      if (place === "not-in-block") return undefined;
      if (place !== "left-out") moved.push([place.to, text]);
    }
    wording.set(language, { ...Object.fromEntries(moved), ...wording.get(language) });
  }
  return Object.fromEntries(wording);
};
