import { type Problem, problem } from "@roundbook/schemas";

/**
 * What `JSON.parse` threw for a text, with line and column, both from 1; where the parser of this
 * engine tells no position, the end of the text. `first` is the number of the text's first line.
 */
export function jsonFault(text: string, error: unknown, first = 1): Problem {
  const position = /position (\d+)/.exec(error instanceof Error ? error.message : "")?.[1];
  const before = text.slice(0, position === undefined ? text.length : Number(position));
  const lines = before.split("\n");
  return problem("", "json-syntax", {
    line: first + lines.length - 1,
    column: (lines.at(-1)?.length ?? 0) + 1,
  });
}
