import type { PlaceRow, Problem } from "@roundbook/schemas";
import { problem } from "@roundbook/schemas";
import type { Made } from "../append-entries.ts";
import { derivedId } from "./identity.ts";

type Level = PlaceRow["level"];
export type PlaceAdded = Extract<Made, { kind: "place-added" }>["body"];

export interface FoundPlace {
  readonly place: string;
  /** Places that have to be added first, outermost first. */
  readonly added: readonly PlaceAdded[];
}

export interface PlaceTree {
  /** By the names or codes from the site down; unknown ones are to be added. */
  readonly find: (path: readonly string[]) => FoundPlace | Problem;
  /** Takes places as added, so that the next rows find them. */
  readonly grow: (added: readonly PlaceAdded[]) => void;
  readonly sites: () => readonly string[];
}

const BELOW: Readonly<Record<Level, Level | null>> = {
  site: "building",
  building: "floor",
  floor: "room",
  room: null,
};
const LONGEST = 200;

interface Node {
  readonly id: string;
  readonly level: Level;
}

const keyOf = (parent: string | null, name: string) => `${parent ?? ""}\n${name.toLowerCase()}`;

/** The estate's places, and those an import finds named but not there. `zone` is for new sites. */
export function placeTree(places: readonly PlaceRow[], zone: string): PlaceTree {
  const nodes = new Map<string, Node>();
  const sites: string[] = [];
  const lastOrder = new Map<string | null, number>();

  const remember = ({ place: id, parent, level, code, name }: PlaceAdded, order: number): void => {
    for (const label of [code, name]) {
      const key = keyOf(parent, label);
      if (!nodes.has(key)) nodes.set(key, { id, level });
    }
    if (level === "site") sites.push(id);
    lastOrder.set(parent, Math.max(lastOrder.get(parent) ?? 0, order));
  };
  for (const place of places) remember({ ...place, place: place.id }, place.order);

  return {
    sites: () => sites,
    grow: (added) => {
      for (const place of added) remember(place, place.order ?? 0);
    },
    find: (path) => {
      const added: PlaceAdded[] = [];
      let parent: Node | null = null;
      for (const [depth, name] of path.entries()) {
        if (name.length > LONGEST)
          return problem("", "label-too-long", { length: name.length, limit: LONGEST });
        const above: Node | null = parent;
        const known = nodes.get(keyOf(above?.id ?? null, name));
        if (known) {
          parent = known;
          continue;
        }
        const level: Level | null = above ? BELOW[above.level] : "site";
        if (!level) return problem("", "place-too-deep", { name });
        const id = derivedId("place", ...path.slice(0, depth + 1));
        added.push({
          place: id,
          parent: above?.id ?? null,
          level,
          code: name,
          name,
          order: (lastOrder.get(above?.id ?? null) ?? 0) + 1,
          ...(level === "site" ? { zone } : {}),
        });
        parent = { id, level };
      }
      return parent ? { place: parent.id, added } : problem("", "place-missing");
    },
  };
}
