import { DIALECT, JSON_SCHEMA_DRAFT } from "@roundbook/schemas";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";

/** `why` is null when it is JSON and no checklist; else what the parser says and where. */
export type ReadDocument =
  | { readonly ok: true; readonly document: DraftDocument }
  | { readonly ok: false; readonly why: string | null };

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const isPoint = (value: unknown): boolean =>
  isRecord(value) && typeof value.$ref === "string" && typeof value.title === "string";

/**
 * A pasted text as a draft. It has to be shaped so that the editor can show it; everything finer
 * is the server's to say, by pointer, when it keeps it. Embedded answer types are left behind.
 */
export const readDocument = (text: string): ReadDocument => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) };
  }
  if (!isRecord(value) || typeof value.title !== "string" || !isRecord(value.properties))
    return { ok: false, why: null };
  if (!Object.values(value.properties).every(isPoint)) return { ok: false, why: null };
  const { $defs: _, ...rest } = value;
  const document = {
    ...emptyDocument(value.title),
    ...rest,
    $schema: JSON_SCHEMA_DRAFT,
    dialect: DIALECT,
    type: "object",
    additionalProperties: false,
  };
  return { ok: true, document: document as unknown as DraftDocument };
};
