import { existsSync, readFileSync } from "node:fs";
import { realDataPath } from "./folder.ts";

const ENTITIES: Readonly<Record<string, string>> = {
  lt: "<",
  gt: ">",
  amp: "&",
  quot: '"',
  apos: "'",
};

const plain = (text: string): string =>
  text.replaceAll(/&(#?\w+);/g, (whole, name: string) =>
    name.startsWith("#") ? String.fromCodePoint(Number(name.slice(1))) : (ENTITIES[name] ?? whole),
  );

/** The attributes of one tag of a file that writes all of them in double quotes. */
const attributesOf = (tag: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    [...tag.matchAll(/([\w:-]+)\s*=\s*"([^"]*)"/g)].map(([, name, value]) => [
      name ?? "",
      plain(value ?? ""),
    ]),
  );

const read = (name: string): string | null => {
  const path = realDataPath(name);
  return existsSync(path) ? readFileSync(path, "utf8").replaceAll(/<!--[\s\S]*?-->/g, "") : null;
};

export type Case = Readonly<Record<string, string>>;

/** The cases of one section of UCUM's functional tests; null where the file is absent. */
export const functionalCases = (section: string): readonly Case[] | null => {
  const text = read("UcumFunctionalTests.xml");
  if (text === null) return null;
  const part = new RegExp(`<${section}>([\\s\\S]*?)</${section}>`).exec(text)?.[1] ?? "";
  return [...part.matchAll(/<case\s[^>]*>/g)].map(([tag]) => attributesOf(tag));
};

export interface EssenceUnit {
  readonly code: string;
  readonly isBase: boolean;
  readonly isMetric: boolean;
  readonly isSpecial: boolean;
  readonly isArbitrary: boolean;
  /** What one of it is: so many of a unit expression. */
  readonly value: number;
  readonly of: string;
  /** The sign in print, where it is plain text. */
  readonly print: string;
}

export interface Essence {
  readonly prefixes: ReadonlyMap<string, number>;
  readonly units: ReadonlyMap<string, EssenceUnit>;
}

const unitsOf = (text: string): readonly EssenceUnit[] =>
  [...text.matchAll(/<(base-)?unit\s([^>]*)>([\s\S]*?)<\/(?:base-)?unit>/g)].map(
    ([, base, head = "", body = ""]) => {
      const attributes = attributesOf(head);
      // A special unit's scale is the function's: degF is 5 of K/9.
      const scale = /<function\s[^>]*>/.exec(body)?.[0] ?? /<value\s[^>]*>/.exec(body)?.[0] ?? "";
      const { value = "1", Unit: of = "1" } = attributesOf(scale);
      return {
        code: attributes.Code ?? "",
        isBase: base !== undefined,
        isMetric: base !== undefined || attributes.isMetric === "yes",
        isSpecial: attributes.isSpecial === "yes",
        isArbitrary: attributes.isArbitrary === "yes",
        value: Number(value),
        of,
        print: plain(/<printSymbol>([^<]*)<\/printSymbol>/.exec(body)?.[1] ?? ""),
      };
    },
  );

/** The definitions of UCUM; null where the file is absent. */
export const essence = (): Essence | null => {
  const text = read("ucum-essence.xml");
  if (text === null) return null;
  const prefixes = [...text.matchAll(/<prefix\s([^>]*)>[\s\S]*?<value value="([^"]*)"/g)];
  return {
    prefixes: new Map(
      prefixes.map(([, head = "", value]) => [attributesOf(head).Code ?? "", Number(value)]),
    ),
    units: new Map(unitsOf(text).map((unit) => [unit.code, unit])),
  };
};
