import type { Problem } from "../shared/problem.ts";
import type { Place } from "./tree.ts";

const TOKENS = /"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'|\/\/[^\n]*|[()]/g;

/** Where each pair of round brackets opens and closes, outside texts and comments. */
export const pairsOf = (source: string): readonly (readonly [number, number])[] => {
  const pairs: [number, number][] = [];
  const open: number[] = [];
  for (const { 0: token, index } of source.matchAll(TOKENS)) {
    if (token === "(") open.push(index);
    const opened = token === ")" ? open.pop() : undefined;
    if (opened !== undefined) pairs.push([opened, index]);
  }
  return pairs;
};

/**
 * A place that cuts no pair of brackets in half. The parser drops brackets, so to it the quotient
 * in "(a + b) / c" begins at "a", inside its own brackets.
 */
const whole = (place: Place, source: string): Place => {
  let { start, end } = place;
  for (const [opens, closes] of pairsOf(source)) {
    if (opens < start && closes >= start && closes < end) start = opens;
    if (opens >= start && opens < end && closes >= end) end = closes + 1;
  }
  return { start, end };
};

/** Problems of a formula that was read, each with the whole of what it is about as its place. */
export const atWholePlaces = (problems: readonly Problem[], source: string): readonly Problem[] =>
  problems.map((found) => {
    const { start, end } = found.params;
    if (typeof start !== "number" || typeof end !== "number") return found;
    return { ...found, params: { ...found.params, ...whole({ start, end }, source) } };
  });
