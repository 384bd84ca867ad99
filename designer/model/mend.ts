import type { Problem } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

type Json = Readonly<Record<string, unknown>> | readonly unknown[] | string;

const isBranch = (value: unknown): value is Record<string, unknown> | unknown[] =>
  typeof value === "object" && value !== null;

const replaceAt = (
  value: unknown,
  path: readonly string[],
  change: (leaf: string) => string,
): Json | null => {
  const [step, ...rest] = path;
  if (step === undefined) return typeof value === "string" ? change(value) : null;
  if (!isBranch(value) || !Object.hasOwn(value, step)) return null;
  const child = replaceAt((value as Record<string, unknown>)[step], rest, change);
  if (child === null) return null;
  return Array.isArray(value)
    ? value.map((one, index) => (String(index) === step ? child : one))
    : { ...value, [step]: child };
};

/** The document with what was probably meant in a problem's place; null when nothing is near. */
export const mend = (document: DraftDocument, problem: Problem): DraftDocument | null => {
  const { nearest, start, end } = problem.params;
  if (typeof nearest !== "string" || nearest === "") return null;
  const path = problem.pointer
    .split("/")
    .slice(1)
    .map((token) => token.replaceAll("~1", "/").replaceAll("~0", "~"));
  const within = typeof start === "number" && typeof end === "number";
  const changed = replaceAt(document, path, (text) =>
    within ? text.slice(0, start) + nearest + text.slice(end) : nearest,
  );
  // Only a text leaf was replaced, so the document kept its shape.
  return changed as DraftDocument | null;
};
