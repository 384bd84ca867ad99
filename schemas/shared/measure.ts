import { isKeptText, isPlainText } from "./plain-text.ts";
import { at, type Problem, problem } from "./problem.ts";

/** What a document may weigh before anything else looks at it. */
export interface Measures {
  readonly bytes: number;
  readonly depth: number;
}

/** Bytes of a string in JSON and UTF-8; undefined for a text that no log could keep whole. */
const jsonLength = (text: string): number | undefined => {
  if (isPlainText(text)) return text.length + 2;
  if (!isKeptText(text)) return undefined;
  let bytes = 0;
  for (const character of JSON.stringify(text)) {
    const code = character.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
};

/** A plain record as JSON.parse makes it: no class, no accessor that could run code. */
export const isPlain = (value: object): boolean => {
  const prototype: unknown = Object.getPrototypeOf(value);
  return (
    prototype === Object.prototype ||
    prototype === null ||
    Object.getPrototypeOf(prototype) === null
  );
};

/**
 * Walks a value once, within the limits: it has to be JSON, of texts that can be kept, at most
 * `bytes` in canonical form and `depth` levels deep. Circles and endless depth end at the depth limit. Null when all is well.
 */
export const measure = (value: unknown, limits: Measures): Problem | null => {
  let left = limits.bytes;
  const spend = (bytes: number): boolean => {
    left -= bytes;
    return left >= 0;
  };
  const tooBig = () => problem("", "document-too-big", { limit: limits.bytes });

  // Pointers are made on the way back from a fault: documents without one, nearly all, need none.
  const within = (found: Problem, token: string | number): Problem =>
    found.code === "document-too-big"
      ? found
      : { ...found, pointer: at("", token) + found.pointer };

  const walk = (part: unknown, depth: number): Problem | null => {
    if (depth > limits.depth) return problem("", "document-too-deep", { limit: limits.depth });
    if (part === null || typeof part === "boolean") return spend(4) ? null : tooBig();
    if (typeof part === "string") {
      // Each character is at least a byte: a giant string is refused without escaping it.
      if (part.length > left) return tooBig();
      const length = jsonLength(part);
      if (length === undefined) return problem("", "bad-text");
      return spend(length) ? null : tooBig();
    }
    if (typeof part === "number") {
      if (!Number.isFinite(part)) return problem("", "not-json");
      return spend(String(part).length) ? null : tooBig();
    }
    if (Array.isArray(part)) {
      if (!spend(part.length + 1)) return tooBig();
      for (let index = 0; index < part.length; index += 1) {
        const found = walk(part[index], depth + 1);
        if (found) return within(found, index);
      }
      return null;
    }
    if (typeof part !== "object" || !isPlain(part)) return problem("", "not-json");
    if (!spend(2)) return tooBig();
    const members = part as Readonly<Record<string, unknown>>;
    for (const key of Object.keys(members)) {
      if (key.length > left) return tooBig();
      const length = jsonLength(key);
      if (length === undefined) return problem("", "bad-text");
      if (!spend(length + 2)) return tooBig();
      const found = walk(members[key], depth + 1);
      if (found) return within(found, key);
    }
    return null;
  };
  return walk(value, 0);
};
