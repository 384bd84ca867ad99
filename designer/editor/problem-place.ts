import { LINT_CODES, type Problem } from "@roundbook/schemas";
import type { DraftDocument } from "../model/draft-document.ts";

export const isWarning = (problem: Problem): boolean =>
  LINT_CODES[problem.code]?.level === "warning";

const token = (pointer: string, at: number): string | undefined =>
  pointer.split("/")[at]?.replaceAll("~1", "/").replaceAll("~0", "~");

/** The point a problem lies in, or null when it lies around the points. */
export const pointOf = (document: DraftDocument, problem: Problem): string | null => {
  if (token(problem.pointer, 1) !== "properties") return null;
  const name = token(problem.pointer, 2);
  return name !== undefined && Object.hasOwn(document.properties, name) ? name : null;
};

/** The problems that stand in the way first; what the server found too is listed once. */
export const problemsOf = (
  linted: readonly Problem[],
  served: readonly Problem[],
): readonly Problem[] => {
  const seen = new Map<string, Problem>();
  for (const problem of [...linted, ...served])
    seen.set(`${problem.pointer} ${problem.code}`, problem);
  return [...seen.values()].sort((a, b) => Number(isWarning(a)) - Number(isWarning(b)));
};
