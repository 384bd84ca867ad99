import type { Problem } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";
import { stepsOf } from "./follow-wording.ts";

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

const MISPLACED: ReadonlySet<string> = new Set(["wording-unknown-place", "wording-not-a-text"]);

/** A wording with its place, where a problem says that there is no text at it. */
const misplaced = ({ wording = {} }: DraftDocument, { code, pointer }: Problem) => {
  const [, language = "", place = ""] = MISPLACED.has(code) ? stepsOf(pointer) : [];
  if (!Object.hasOwn(wording, language)) return null;
  const { [place]: text, ...others } = wording[language] ?? {};
  return text === undefined ? null : { language, text, others };
};

/** The document without a wording that stands for no text; null where a problem is none of that. */
export const withoutMisplaced = (
  document: DraftDocument,
  problem: Problem,
): DraftDocument | null => {
  const found = misplaced(document, problem);
  return found && { ...document, wording: { ...document.wording, [found.language]: found.others } };
};

/** The wording put to the place that was probably meant, where nothing is said there yet. */
const placed = (document: DraftDocument, problem: Problem, nearest: string) => {
  const found = misplaced(document, problem);
  if (!found || Object.hasOwn(found.others, nearest)) return null;
  const texts = { ...found.others, [nearest]: found.text };
  return { ...document, wording: { ...document.wording, [found.language]: texts } };
};

/** The document with what was probably meant in a problem's place; null when nothing is near. */
export const mend = (document: DraftDocument, problem: Problem): DraftDocument | null => {
  const { nearest, start, end } = problem.params;
  if (typeof nearest !== "string" || nearest === "") return null;
  // A wording's place is its name, not the text that a pointer leads to.
  if (MISPLACED.has(problem.code)) return placed(document, problem, nearest);
  const path = stepsOf(problem.pointer);
  const within = typeof start === "number" && typeof end === "number";
  const changed = replaceAt(document, path, (text) =>
    within ? text.slice(0, start) + nearest + text.slice(end) : nearest,
  );
  // Only a text leaf was replaced, so the document kept its shape.
  return changed as DraftDocument | null;
};
