import { CHECKLIST_SCHEMA, DIALECT, JSON_SCHEMA_DRAFT, type Problem } from "@roundbook/schemas";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { shapeProblems } from "./shape.ts";

/** No JSON: where the parser stopped, counted from 1, and what it says. */
interface NotJson {
  readonly ok: false;
  readonly line: number;
  readonly column: number;
  readonly why: string;
}

export type ReadDocument =
  | { readonly ok: true; readonly document: DraftDocument }
  | NotJson
  /** JSON that the editor cannot show as a checklist. */
  | { readonly ok: false; readonly problems: readonly Problem[] };

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Where a parser stopped: browsers say it as an offset, or as line and column. */
const placeOf = (text: string, message: string): { line: number; column: number } => {
  const named = /line (\d+) column (\d+)/.exec(message);
  if (named) return { line: Number(named[1]), column: Number(named[2]) };
  const offset = /position (\d+)/.exec(message);
  const before = text.slice(0, offset ? Number(offset[1]) : text.length);
  return { line: before.split("\n").length, column: before.length - before.lastIndexOf("\n") };
};

/** A text as any JSON value. */
export const readJsonText = (
  text: string,
): { readonly ok: true; readonly value: unknown } | NotJson => {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, ...placeOf(text, why), why: why.replace(/ in JSON at position.*$/s, "") };
  }
};

/**
 * A pasted text as a draft. It has to be shaped so that the editor can show it; everything finer
 * is the server's to say, by pointer, when it keeps it. Embedded answer types are left behind.
 */
export const readDocument = (text: string): ReadDocument => {
  const read = readJsonText(text);
  return read.ok ? asDraft(read.value) : read;
};

/** A value as a draft, where it has the shape of a checklist. */
export const asDraft = (
  value: unknown,
): Extract<ReadDocument, { ok: true }> | { ok: false; problems: readonly Problem[] } => {
  if (!isRecord(value)) return { ok: false, problems: shapeProblems(CHECKLIST_SCHEMA, value) };
  const { $defs: _, ...rest } = value;
  const { title: __, properties: ___, ...begun } = emptyDocument("");
  const document = {
    ...begun,
    ...rest,
    $schema: JSON_SCHEMA_DRAFT,
    dialect: DIALECT,
    type: "object",
    additionalProperties: false,
  };
  const problems = shapeProblems(CHECKLIST_SCHEMA, document);
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, document: document as unknown as DraftDocument };
};
