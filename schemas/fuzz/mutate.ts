import { isPlain } from "../shared/measure.ts";
import {
  bent,
  NOT_JSON,
  ODD_FORMULAS,
  ODD_NAMES,
  ODD_PATTERNS,
  ODD_TEXTS,
  ODD_VALUES,
} from "./nasty.ts";
import type { Random } from "./random.ts";

type Members = Record<string, unknown>;
/** A place in a document: what holds it, and by which name or index. */
interface Place {
  readonly holder: Members | unknown[];
  readonly key: string;
  readonly value: unknown;
}

const isMembers = (value: unknown): value is Members =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const placesOf = (root: unknown): readonly Place[] => {
  const places: Place[] = [];
  const walk = (holder: unknown): void => {
    if (!isMembers(holder) && !Array.isArray(holder)) return;
    for (const [key, value] of Object.entries(holder)) {
      places.push({ holder, key, value });
      walk(value);
    }
  };
  walk(root);
  return places;
};

/** Sets an own member, `__proto__` too, as JSON.parse does. */
const set = ({ holder, key }: Pick<Place, "holder" | "key">, value: unknown): void => {
  Object.defineProperty(holder, key, {
    value,
    writable: true,
    enumerable: true,
    configurable: true,
  });
};

const remove = ({ holder, key }: Place): void => {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else Reflect.deleteProperty(holder, key);
};

const copyOf = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(copyOf);
  if (!isMembers(value) || !isPlain(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, copyOf(one)]));
};

export type Mutation = (random: Random, places: readonly Place[]) => void;

/** Members and elements left out, doubled, renamed and moved elsewhere. */
const structure: readonly Mutation[] = [
  (random, places) => remove(random.pick(places)),
  (random, places) => {
    const { holder, key, value } = random.pick(places);
    if (Array.isArray(holder)) holder.push(copyOf(value));
    else set({ holder, key: `${key}_2` }, copyOf(value));
  },
  (random, places) => {
    const place = random.pick(places);
    if (Array.isArray(place.holder)) place.holder.reverse();
    else {
      remove(place);
      set({ holder: place.holder, key: random.pick(places).key }, place.value);
    }
  },
  (random, places) => set(random.pick(places), copyOf(random.pick(places).value)),
  (random, places) => {
    const lists = places.filter(({ value }) => Array.isArray(value));
    if (lists.length === 0) return;
    const { value } = random.pick(lists);
    if (!Array.isArray(value)) return;
    const all: unknown[] = [...value];
    value.length = 0;
    for (let times = random.pick([0, 0, 2, 40]); times > 0; times -= 1) {
      value.push(...all.map(copyOf));
    }
  },
];

/** Other JSON types, sizes and depths; now and then what no JSON has. */
const values: readonly Mutation[] = [
  (random, places) => set(random.pick(places), copyOf(random.pick(ODD_VALUES))),
  (random, places) => {
    const numbers = places.filter(({ value }) => typeof value === "number");
    if (numbers.length === 0) return;
    const place = random.pick(numbers);
    const factor = random.pick([0, -1, 0.1, 1e9, 1e-9, 1e300, 1.000_000_1]);
    set(place, Number(place.value) * factor);
  },
  (random, places) => set(random.pick(places), random.below(2000) - 1000),
  (random, places) => {
    const value = random.below(4) === 0 ? random.pick([...NOT_JSON, "x"]) : random.pick(ODD_VALUES);
    set(random.pick(places), copyOf(value));
  },
];

/** Texts that cannot be kept, and names that objects inherit. */
const names: readonly Mutation[] = [
  (random, places) => set(random.pick(places), random.pick(ODD_TEXTS)),
  (random, places) => {
    const { holder, value } = random.pick(places.filter((place) => isMembers(place.holder)));
    set({ holder, key: random.pick(ODD_NAMES) }, copyOf(value));
  },
  (random, places) => {
    const place = random.pick(places.filter(({ holder }) => isMembers(holder)));
    remove(place);
    set({ holder: place.holder, key: random.pick(ODD_NAMES) }, place.value);
  },
  (random, places) => {
    const texts = places.filter(({ value }) => typeof value === "string");
    set(random.pick(texts), random.pick(ODD_NAMES));
  },
];

const WRITTEN = /^(min|max|exclusive|when|formula|calculate|count|within|uncertainty|\d+$)/;

/** Formulas, patterns, units and names changed where they stand. */
const language: readonly Mutation[] = [
  (random, places) => {
    const formulas = places.filter(
      ({ key, value }) => WRITTEN.test(key) && typeof value !== "object",
    );
    if (formulas.length > 0) set(random.pick(formulas), random.pick(ODD_FORMULAS));
  },
  (random, places) => {
    const texts = places.filter(({ value }) => typeof value === "string");
    const place = random.pick(texts);
    set(place, bent(random, String(place.value)));
  },
  (random, places) => {
    const points = places.filter(({ value }) => isMembers(value) && Object.hasOwn(value, "title"));
    if (points.length === 0) return;
    const { value } = random.pick(points);
    if (isMembers(value)) set({ holder: value, key: "pattern" }, random.pick(ODD_PATTERNS));
  },
  (random, places) => {
    const words = places.filter(({ value }) => typeof value === "string");
    set(random.pick(words), random.pick(words).value);
  },
];

export const MUTATIONS = { structure, values, names, language } as const;

/** A copy of a document with one to three mutations of one family. */
export const mutated = (random: Random, doc: unknown, family: readonly Mutation[]): unknown => {
  const copy = copyOf(doc);
  for (let times = random.pick([1, 1, 1, 2, 3]); times > 0; times -= 1) {
    const places = placesOf(copy);
    if (places.length > 20) random.pick(family)(random, places);
  }
  return copy;
};
