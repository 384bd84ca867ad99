import { DIALECT, JSON_SCHEMA_DRAFT, type Problem } from "@roundbook/schemas";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";

export type ReadDocument =
  | { readonly ok: true; readonly document: DraftDocument }
  /** No JSON: where the parser stopped, counted from 1, and what it says. */
  | { readonly ok: false; readonly line: number; readonly column: number; readonly why: string }
  /** JSON that the editor cannot show as a checklist. */
  | { readonly ok: false; readonly problems: readonly Problem[] };

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const lacks = (pointer: string, keyword: string): Problem => ({
  pointer,
  code: "missing-keyword",
  params: { keyword },
});
const wrong = (pointer: string, expected: string): Problem => ({
  pointer,
  code: "wrong-type",
  params: { expected },
});

const token = (name: string): string => name.replaceAll("~", "~0").replaceAll("/", "~1");

const pointProblems = (name: string, point: unknown): Problem[] => {
  const pointer = `/properties/${token(name)}`;
  if (!isRecord(point)) return [wrong(pointer, "object")];
  const kind = typeof point.$ref === "string" ? [] : [lacks(pointer, "$ref")];
  return typeof point.title === "string" ? kind : [...kind, lacks(pointer, "title")];
};

const shapeProblems = (value: Record<string, unknown>): Problem[] => {
  const problems = typeof value.title === "string" ? [] : [lacks("", "title")];
  if (!isRecord(value.properties)) problems.push(lacks("", "properties"));
  else
    for (const [name, point] of Object.entries(value.properties))
      problems.push(...pointProblems(name, point));
  for (const map of ["particulars", "values", "scores"])
    if (value[map] !== undefined && !isRecord(value[map]))
      problems.push(wrong(`/${map}`, "object"));
  for (const list of ["groups", "cautions"])
    if (value[list] !== undefined && !Array.isArray(value[list]))
      problems.push(wrong(`/${list}`, "array"));
  return problems;
};

/** Where a parser stopped: browsers say it as an offset, or as line and column. */
const placeOf = (text: string, message: string): { line: number; column: number } => {
  const named = /line (\d+) column (\d+)/.exec(message);
  if (named) return { line: Number(named[1]), column: Number(named[2]) };
  const offset = /position (\d+)/.exec(message);
  const before = text.slice(0, offset ? Number(offset[1]) : text.length);
  return { line: before.split("\n").length, column: before.length - before.lastIndexOf("\n") };
};

/**
 * A pasted text as a draft. It has to be shaped so that the editor can show it; everything finer
 * is the server's to say, by pointer, when it keeps it. Embedded answer types are left behind.
 */
export const readDocument = (text: string): ReadDocument => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, ...placeOf(text, why), why: why.replace(/ in JSON at position.*$/s, "") };
  }
  if (!isRecord(value)) return { ok: false, problems: [wrong("", "object")] };
  const problems = shapeProblems(value);
  if (problems.length > 0) return { ok: false, problems };
  const { $defs: _, ...rest } = value;
  const document = {
    ...emptyDocument(String(value.title)),
    ...rest,
    $schema: JSON_SCHEMA_DRAFT,
    dialect: DIALECT,
    type: "object",
    additionalProperties: false,
  };
  return { ok: true, document: document as unknown as DraftDocument };
};
