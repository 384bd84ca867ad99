import type { ProblemParam } from "@roundbook/schemas";
import { printNumber, printQuantity, printUnit } from "../look/print-unit.ts";

/**
 * A message is text with blanks: `{name}` prints a parameter, `{name:unit}` a UCUM code, `{name~}` a
 * number in the unit of the parameter `unit`, `{name?words}` words (its value at `$`) that are left out without
 * the parameter. `{name|one|other}` prints the first word for 1, or for a sign that points down (`<`).
 */
export type MessageMap = Readonly<Record<string, string>>;

type BlankName<S extends string> = S extends `${infer Name}${"|" | ":" | "~" | "?"}${string}`
  ? Name
  : S;

/** The parameter names a message mentions. */
export type Blanks<S extends string> = S extends `${string}{${infer Blank}}${infer Rest}`
  ? BlankName<Blank> | Blanks<Rest>
  : never;

export type MessageParams = Readonly<Record<string, ProblemParam | undefined>>;

const BLANK = /\{(\w+)(?:(:unit|~)|\?([^{}]*)|\|([^|{}]*)\|([^{}]*))?\}/g;

function print(value: ProblemParam | undefined): string {
  if (value === undefined || value === null) return "";
  if (typeof value === "number") return printNumber(value);
  if (typeof value === "object") return value.map((one) => print(one)).join(", ");
  return String(value);
}

const isPresent = (value: ProblemParam | undefined): boolean =>
  value !== undefined && value !== null && value !== "";
const isFirst = (value: ProblemParam | undefined): boolean =>
  value === 1 || (typeof value === "string" && value.startsWith("<"));

/** Fills the blanks of a message. A parameter that is missing prints as nothing. */
export function fillBlanks(message: string, params: MessageParams): string {
  const unit = typeof params.unit === "string" ? params.unit : "1";
  return message.replace(BLANK, (_, name: string, how, given, one, other) => {
    const value = params[name];
    if (one !== undefined) return String(isFirst(value) ? one : other);
    if (given !== undefined) return isPresent(value) ? given.replace("$", print(value)) : "";
    if (how === ":unit") return printUnit(print(value));
    return how === "~" && typeof value === "number" ? printQuantity(value, unit) : print(value);
  });
}
