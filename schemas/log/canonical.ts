import { hasLoneSurrogate, isPlainText } from "../shared/plain-text.ts";

const refuse = (what: string): never => {
  throw new TypeError(`no canonical JSON for ${what}`);
};

function text(value: string): string {
  if (isPlainText(value)) return `"${value}"`;
  if (hasLoneSurrogate(value)) refuse("a lone surrogate");
  return JSON.stringify(value);
}

/** Default sort compares UTF-16 code units, as RFC 8785 §3.2.3 asks; most names stand so already. */
function inOrder(names: string[]): readonly string[] {
  for (let index = 1; index < names.length; index += 1)
    if ((names[index - 1] ?? "") > (names[index] ?? "")) return names.sort();
  return names;
}

function members(value: object, known: KnownTexts | undefined): string {
  const prototype: unknown = Object.getPrototypeOf(value);
  // The root of any realm's prototypes, or none: a Date or a Map has another and is no JSON.
  if (
    prototype !== Object.prototype &&
    prototype !== null &&
    Object.getPrototypeOf(prototype) !== null
  )
    refuse("a class instance");
  const object = value as Readonly<Record<string, unknown>>;
  // Joined, not added up: a long text that is still a tree of its pieces burdens whoever keeps it.
  const parts: string[] = [];
  for (const name of inOrder(Object.keys(object))) {
    const member = object[name];
    if (member !== undefined) parts.push(`${text(name)}:${canonicalize(member, known)}`);
  }
  return `{${parts.join(",")}}`;
}

function elements(list: readonly unknown[], known: KnownTexts | undefined): string {
  const parts: string[] = [];
  // By index: a hole is refused, where `map` would pass over it.
  for (let index = 0; index < list.length; index += 1) parts.push(canonicalize(list[index], known));
  return `[${parts.join(",")}]`;
}

/** Canonical forms made before, by the very object they are of. */
export type KnownTexts = ReadonlyMap<object, string>;

/**
 * The canonical form of RFC 8785 (JSON Canonicalization Scheme). Members that are `undefined` are
 * left out, as on the wire. Only own properties are read. Parts in `known` are not written again.
 * @throws TypeError for what JSON cannot say exactly: NaN, infinities, lone surrogates, functions.
 */
export function canonicalize(value: unknown, known?: KnownTexts): string {
  switch (typeof value) {
    case "string":
      return text(value);
    case "number":
      // ECMAScript's own number formatting is what RFC 8785 §3.2.2.3 asks; it writes -0 as 0.
      return Number.isFinite(value) ? String(value) : refuse("a non-finite number");
    case "boolean":
      return value ? "true" : "false";
    case "object":
      if (value === null) return "null";
      return (
        known?.get(value) ?? (Array.isArray(value) ? elements(value, known) : members(value, known))
      );
    default:
      return refuse(typeof value);
  }
}
