import { type Problem, problem, type Result } from "@roundbook/schemas";
import { jsonFault } from "../usecases/json-fault.ts";
import { sayProblem } from "../words/say.ts";
import { DONE, type Io, NOT_RIGHT } from "./io.ts";
import { type Line, LONGEST_LINE, readLines } from "./lines.ts";

/** What one line of standard input holds. */
export type Given = Readonly<Record<string, unknown>>;

export const isObject = (value: unknown): value is Given =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export const bad = (...problems: readonly Problem[]): Result<never> => ({ ok: false, problems });

/** Problems with their sentences. */
export const told = (problems: readonly Problem[]) =>
  problems.map((one) => ({ ...one, says: sayProblem(one) }));

function readGiven({ number, text, fault }: Line): Result<Given> {
  if (text === null) return bad(problem("", fault ?? "not-utf8", { limit: LONGEST_LINE }));
  try {
    const value: unknown = JSON.parse(text);
    return isObject(value)
      ? { ok: true, value }
      : bad(problem("", "wrong-type", { expected: ["object"] }));
  } catch (error) {
    return bad(jsonFault(text, error, number));
  }
}

export interface LineAnswers {
  readonly answer: (given: Given) => Result<string>;
  /** What stands for a line that was not answered; `line` from 1. */
  readonly refused: (line: number, problems: readonly Problem[]) => string;
}

/**
 * Answers each line of JSON objects on standard input with a line, blank ones apart. What is wrong
 * with a line is said on its own line and on standard error, and the next is read; gives the exit
 * status.
 */
export async function answerLines(io: Io, { answer, refused }: LineAnswers): Promise<number> {
  let status = DONE;
  for await (const line of readLines(io.stdin)) {
    if (line.text?.trim() === "") continue;
    const given = readGiven(line);
    const answered = given.ok ? answer(given.value) : given;
    if (answered.ok) {
      await io.out(answered.value);
      continue;
    }
    status = NOT_RIGHT;
    for (const one of answered.problems) io.err(`line ${line.number}: ${sayProblem(one)}`);
    await io.out(refused(line.number, answered.problems));
  }
  return status;
}
