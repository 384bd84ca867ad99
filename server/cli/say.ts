import type { Explanation, ProblemParam } from "@roundbook/schemas";
import { WORDS } from "./words.ts";

/** Numbers as JavaScript writes them, lists with commas, and nothing for what is unknown. */
function written(value: ProblemParam | undefined): string {
  if (value === undefined || value === null) return "";
  return Array.isArray(value) ? value.join(", ") : String(value);
}

/** An explanation or problem as an English sentence. A code without wording speaks for itself. */
export function say({ moved = [], ...said }: Explanation): string {
  return [sayOne(said), ...moved.map(say)].join("; ");
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
const PARAMETER = /\{([a-zA-Z]+)\}/g;

function fill(words: string, params: Params): string {
  const filled = words.replace(/\[([^\]]*)\]/g, (_, clause: string) => {
    const names = [...clause.matchAll(PARAMETER)].map(([, name = ""]) => name);
    return names.every((name) => written(params[name]) !== "") ? clause : "";
  });
  return filled.replace(PARAMETER, (_, name: string) => written(params[name]));
}

/** A problem with the place it names. */
export const sayProblem = (found: Explanation & { readonly pointer: string }): string =>
  found.pointer === "" ? say(found) : `${found.pointer}: ${say(found)}`;
