import { LINT_CODES, type Problem } from "@roundbook/schemas";
import { pageOrder } from "../model/commands.ts";
import type { DraftDocument } from "../model/draft-document.ts";

/** A problem with the number it has at its spot and in the footnotes. */
export interface Footnoted {
  readonly number: number;
  readonly problem: Problem;
}

export const isWarning = (problem: Problem): boolean =>
  LINT_CODES[problem.code]?.level === "warning";

const tokens = (pointer: string): string[] =>
  pointer
    .split("/")
    .slice(1)
    .map((token) => token.replaceAll("~1", "/").replaceAll("~0", "~"));

/** The point a problem lies in, or null when it lies around the points. */
export const pointOf = (document: DraftDocument, problem: Problem): string | null => {
  const [member, name] = tokens(problem.pointer);
  if (member !== "properties" || name === undefined) return null;
  return Object.hasOwn(document.properties, name) ? name : null;
};

/** Clauses of a limit whose blanks lie a level deeper. */
const CLAUSES: ReadonlySet<string> = new Set(["sameAsLast", "decision"]);

/** The blank of the editor in which a problem can be put right, where there is one. */
export const blankOf = (document: DraftDocument, { pointer, code }: Problem): string | null => {
  const [member = "", name = "", ...parts] = tokens(pointer);
  if (member === "properties") {
    const [part, ...rest] = parts;
    if (part === "limits" && code === "limit-without-basis")
      return `${name}/limits/${rest[0] ?? 0}/basis`;
    if (part === "limits" && rest.length === 1) return `${name}/limits/${rest[0]}/max`;
    if (part === "limits" && CLAUSES.has(rest[1] ?? ""))
      return `${name}/limits/${rest[0]}/${rest[1]}/${rest[2] ?? (rest[1] === "decision" ? "uncertainty" : "within")}`;
    if (part === "ask" && rest[0] === "wait") return `${name}/ask/wait/${rest[1] ?? "atLeast"}`;
    if (part === "quantity" || part === "ask")
      return `${name}/${part === "ask" ? "ask/" : ""}${rest[0]}`;
    if (part === "oneOf" || part === "items") return `${name}/options`;
    return part === undefined ? null : [name, part, ...rest.slice(0, 2)].join("/");
  }
  if (member === "include") return "include/blocks";
  if (member === "stops") {
    const [part = "after"] = parts;
    return `stops/${name}/${part === "points" || part === "groups" ? "targets" : part}`;
  }
  if (member === "groups" && parts[0] === "repeat") {
    const group = document.groups?.[Number(name)];
    return group ? `groups/${group.id}/repeat/${parts[1] ?? "how"}` : null;
  }
  if (member === "particulars" || member === "values" || member === "scores")
    return [member, name, parts[0] === "enum" ? "choices" : parts.slice(0, 3).join("/")].join("/");
  return null;
};

/** The number a point has on the page, such as "2.1". */
export const placeNumber = (document: DraftDocument, name: string | undefined) => {
  const order = pageOrder(document);
  const at = order.findIndex(({ points }) => name !== undefined && points.includes(name));
  const found = order[at];
  return found && name !== undefined ? `${at + 1}.${found.points.indexOf(name) + 1}` : undefined;
};

/** The title of what a problem lies in; null for the document as a whole. */
export const titleAt = (document: DraftDocument, problem: Problem): string | null => {
  const name = pointOf(document, problem);
  if (name !== null) return document.properties[name]?.title ?? name;
  const [member, key = ""] = tokens(problem.pointer);
  if (member === "particulars") return document.particulars?.[key]?.title ?? key;
  if (member === "values") return document.values?.[key]?.title ?? key;
  if (member === "scores") return document.scores?.[key]?.title ?? key;
  if (member === "groups") return document.groups?.[Number(key)]?.title ?? null;
  return null;
};

/** Where it lies, as the page numbers it: "2.1 Insulation resistance". */
export const placeOf = (document: DraftDocument, problem: Problem): string | null => {
  const number = placeNumber(document, pointOf(document, problem) ?? undefined);
  const title = titleAt(document, problem);
  return number && title ? `${number} ${title}` : title;
};

/**
 * The problems that stand in the way first, each kind in the order of the page; what the server
 * found too is listed once.
 */
export const problemsOf = (
  document: DraftDocument,
  linted: readonly Problem[],
  served: readonly Problem[],
): readonly Problem[] => {
  const seen = new Map<string, Problem>();
  for (const problem of [...linted, ...served])
    seen.set(`${problem.pointer} ${problem.code}`, problem);
  const order = pageOrder(document).flatMap(({ points }) => points);
  const rank = (problem: Problem): number =>
    order.indexOf(pointOf(document, problem) ?? "") + (isWarning(problem) ? order.length + 1 : 0);
  return [...seen.values()].sort((a, b) => rank(a) - rank(b));
};
