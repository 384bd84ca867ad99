const LONE_SURROGATE = /\p{Surrogate}/u;

const refuse = (what: string): never => {
  throw new TypeError(`no canonical JSON for ${what}`);
};

function text(value: string): string {
  if (LONE_SURROGATE.test(value)) refuse("a lone surrogate");
  return JSON.stringify(value);
}

function members(value: object): string {
  // The root of any realm's prototypes, or none: a Date or a Map has another and is no JSON.
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== null && Object.getPrototypeOf(prototype) !== null) refuse("a class instance");
  const object = value as Readonly<Record<string, unknown>>;
  let out = "";
  // Default sort compares UTF-16 code units, as RFC 8785 §3.2.3 asks.
  for (const key of Object.keys(object).sort()) {
    const member = object[key];
    if (member === undefined) continue;
    out += `${out === "" ? "" : ","}${text(key)}:${canonicalize(member)}`;
  }
  return `{${out}}`;
}

/**
 * The canonical form of RFC 8785 (JSON Canonicalization Scheme). Members that are `undefined` are
 * left out, as on the wire. Only own properties are read.
 * @throws TypeError for what JSON cannot say exactly: NaN, infinities, lone surrogates, functions.
 */
export function canonicalize(value: unknown): string {
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
      return Array.isArray(value)
        ? `[${Array.from(value, canonicalize).join(",")}]`
        : members(value);
    default:
      return refuse(typeof value);
  }
}
