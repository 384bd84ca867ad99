import type { Explanation, ProblemParam } from "@roundbook/schemas";
import { durationInWords } from "./duration-in-words.ts";
import { PARAM_WORDS, TIMES } from "./param-words.ts";
import { WORDS } from "./words.ts";

/** Numbers as JavaScript writes them, lists with commas, and nothing for what is unknown. */
function written(value: ProblemParam | undefined): string {
  if (value === undefined || value === null) return "";
  return Array.isArray(value) ? value.join(", ") : String(value);
}

/** An explanation or problem as an English sentence. A code without wording speaks for itself. */
export function say({ moved = [], ...said }: Explanation): string {
  return [sayOne(said), ...moved.map(say)].join(", ");
}

function sayOne({ code, params }: Explanation): string {
  const words = Object.hasOwn(WORDS, code) ? WORDS[code] : undefined;
  if (words === undefined) {
    const rest = Object.entries(params).map(([name, value]) => `${name}: ${written(value)}`);
    return [code, ...rest].join("; ");
  }
  return fill(words, params).replace(/ +(?=[ ,.;:)]|$)/g, "");
}

type Params = Explanation["params"];

/** A parameter as a sentence says it: names of the format become words, units of nothing nothing. */
function inWords(params: Params, name: string): string {
  const value = params[name];
  const words = Object.hasOwn(PARAM_WORDS, name) ? PARAM_WORDS[name] : undefined;
  const time = TIMES.has(name) ? durationInWords(value) : null;
  if (time !== null) return time;
  if (!words) return written(value);
  const one = (text: ProblemParam | undefined) =>
    typeof text === "string" && Object.hasOwn(words, text) ? (words[text] ?? "") : written(text);
  return Array.isArray(value) ? value.map(one).join(" or ") : one(value);
}

const PARAMETER = /\{([a-zA-Z]+)\}/g;

function fill(words: string, params: Params): string {
  // The unit of a bare number is no word: "1" after a figure would be read as another figure.
  const bare = params.unit === "1" ? words.replaceAll("} {unit}", "}") : words;
  const filled = bare.replace(/\[([^\]]*)\]/g, (_, clause: string) => {
    const names = [...clause.matchAll(PARAMETER)].map(([, name = ""]) => name);
    return names.every((name) => inWords(params, name) !== "") ? clause : "";
  });
  return filled.replace(PARAMETER, (_, name: string) => inWords(params, name));
}

/** A problem with the place it names. */
export const sayProblem = (found: Explanation & { readonly pointer: string }): string =>
  found.pointer === "" ? say(found) : `${found.pointer}: ${say(found)}`;
