import { type Problem, problem } from "../../shared/problem.ts";
import type { RruleCode } from "./codes.ts";

/** One NAME=VALUE of a rule; `start` is where the value begins, `end` where it ends. */
export interface Part {
  readonly name: string;
  readonly value: string;
  readonly start: number;
  readonly end: number;
}

type Params = Readonly<Record<string, string | number | null>>;
export type Report = (code: RruleCode, params?: Params) => void;

export const reporter =
  (problems: Problem[]): Report =>
  (code, params = {}) => {
    problems.push(problem("", code, params));
  };

/** Cuts at a separator and keeps each piece's place. */
function cut(text: string, separator: string, from: number): Omit<Part, "name">[] {
  let start = from;
  return text.split(separator).map((value) => {
    const piece = { value, start, end: start + value.length };
    start = piece.end + separator.length;
    return piece;
  });
}

/**
 * The parts of a rule, names and values in capitals (RFC 5545 §2 makes no difference). A single
 * semicolon at the end, which some calendars write, says nothing and passes.
 */
export function readParts(text: string, report: Report): Part[] {
  const pieces = cut(text.endsWith(";") ? text.slice(0, -1) : text, ";", 0);
  return pieces.flatMap(({ value: piece, start, end }) => {
    const equals = piece.indexOf("=");
    if (equals > 0 && equals < piece.length - 1) {
      const name = piece.slice(0, equals).toUpperCase();
      return [
        { name, value: piece.slice(equals + 1).toUpperCase(), start: start + equals + 1, end },
      ];
    }
    report("rrule-no-part", { text: piece, start, end });
    return [];
  });
}

export const badValue = (part: Part, report: Report, nearest: string | null = null) =>
  report("rrule-bad-value", {
    part: part.name,
    value: part.value,
    nearest,
    start: part.start,
    end: part.end,
  });

/** A whole number between two bounds; 0 is out where a sign may stand. */
function readNumber(part: Part, least: number, most: number, report: Report): number | null {
  if (!(least < 0 ? /^[+-]?\d{1,9}$/ : /^\d{1,9}$/).test(part.value)) {
    badValue(part, report);
    return null;
  }
  const value = Number(part.value);
  if (value >= least && value <= most && value !== 0) return value;
  const { name, start, end } = part;
  report("rrule-out-of-range", { part: name, value: part.value, least, most, start, end });
  return null;
}

export const pieces = (part: Part): Part[] =>
  cut(part.value, ",", part.start).map((piece) => ({ ...piece, name: part.name }));

const ascending = (a: number, b: number) => a - b;

/** The different numbers of a list, ascending; empty where the part is absent. */
export function readNumbers(
  part: Part | undefined,
  least: number,
  most: number,
  report: Report,
): number[] {
  if (part === undefined) return [];
  const numbers = pieces(part).map((piece) => readNumber(piece, least, most, report));
  return [...new Set(numbers.filter((value) => value !== null))].sort(ascending);
}

export const readOne = (part: Part | undefined, most: number, report: Report): number | null =>
  part === undefined ? null : readNumber(part, 1, most, report);
