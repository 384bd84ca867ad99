import type { ProblemParam } from "@roundbook/schemas";
import { printNumber, printUnit } from "../look/print-unit.ts";

/**
 * A message is text with blanks: `{name}` prints a parameter, `{name:unit}` a UCUM code,
 * `{name|point|points}` one of two words by number.
 */
export type MessageMap = Readonly<Record<string, string>>;

type BlankName<S extends string> = S extends `${infer Name}|${string}`
  ? Name
  : S extends `${infer Name}:${string}`
    ? Name
    : S;

/** The parameter names a message mentions. */
export type Blanks<S extends string> = S extends `${string}{${infer Blank}}${infer Rest}`
  ? BlankName<Blank> | Blanks<Rest>
  : never;

export type MessageParams = Readonly<Record<string, ProblemParam | undefined>>;

const BLANK = /\{([a-zA-Z_]+)(?::(\w+))?(?:\|([^|}]*)\|([^}]*))?\}/g;

function print(value: ProblemParam | undefined, how: string | undefined): string {
  if (value === undefined || value === null) return "";
  if (typeof value === "number") return printNumber(value);
  if (typeof value === "string") return how === "unit" ? printUnit(value) : value;
  if (typeof value === "boolean") return String(value);
  return value.map((one) => print(one, how)).join(", ");
}

/** Fills the blanks of a message. A parameter that is missing prints as nothing. */
export function fillBlanks(message: string, params: MessageParams): string {
  return message.replace(
    BLANK,
    (
      _,
      name: string,
      how: string | undefined,
      one: string | undefined,
      many: string | undefined,
    ) => {
      const value = params[name];
      return one === undefined ? print(value, how) : String(value === 1 ? one : many);
    },
  );
}
