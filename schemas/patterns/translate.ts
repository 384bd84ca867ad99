/** What a pattern means in ECMA-262 (flag u), in words that RE2 reads the same way. */
const LINE_ENDS = "\\n\\r\\x{2028}\\x{2029}";
const SPACES =
  "\\t\\n\\v\\f\\r \\x{a0}\\x{1680}\\x{2000}-\\x{200a}\\x{2028}\\x{2029}\\x{202f}\\x{205f}\\x{3000}\\x{feff}";

/** A token of a pattern: an escape with its operand, or one character. */
const TOKENS =
  /\\u\{[0-9a-fA-F]+\}|\\u[dD][89abAB][0-9a-fA-F]{2}\\u[dD][c-fC-F][0-9a-fA-F]{2}|\\u[0-9a-fA-F]{4}|\\c[A-Za-z]|\\x[0-9a-fA-F]{2}|\\[pP]\{[^}]*\}|\\.|\(\?<(?![=!])|[\s\S]/gu;

const codePoint = (code: number): string => `\\x{${code.toString(16)}}`;

/** `\u00e4`, `\u{1f6aa}`, a surrogate pair, `\cA` and `\0` as a code point; null for other tokens. */
const escapedCode = (token: string): number | null => {
  if (token.startsWith("\\u{")) return Number.parseInt(token.slice(3, -1), 16);
  if (token.startsWith("\\u")) {
    const [high = 0, low] = token
      .slice(2)
      .split("\\u")
      .map((hex) => Number.parseInt(hex, 16));
    return low === undefined ? high : 0x10000 + (high - 0xd800) * 0x400 + (low - 0xdc00);
  }
  if (token.startsWith("\\c")) return (token.codePointAt(2) ?? 0) % 32;
  return token === "\\0" ? 0 : null;
};

/**
 * A pattern of ECMA-262 for RE2, which counts fewer characters as spaces, ends a line with fewer,
 * and has words of its own; null for a class that RE2 cannot say ("[\S]"). The pattern is valid.
 */
export const translatePattern = (source: string): string | null => {
  const parts: string[] = [];
  let inClass = false;
  for (const [token] of source.matchAll(TOKENS)) {
    const code = escapedCode(token);
    if (inClass && token === "\\S") return null;
    if (code !== null) parts.push(codePoint(code));
    else if (token === "\\s") parts.push(inClass ? SPACES : `[${SPACES}]`);
    else if (token === "\\S") parts.push(`[^${SPACES}]`);
    else if (inClass && token === "\\b") parts.push("\\x08");
    // RE2 reads "[[:alpha:]]" as letters.
    else if (inClass && token === "[") parts.push("\\[");
    else if (!inClass && token === ".") parts.push(`[^${LINE_ENDS}]`);
    else if (token === "(?<") parts.push(inClass ? token : "(?P<");
    else parts.push(token);
    if (token === "[") inClass = true;
    else if (token === "]") inClass = false;
  }
  return parts.join("");
};
