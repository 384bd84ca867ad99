import { f } from "./facts.ts";

/** "good", "good or worn", "good, worn or new". */
export const anyOf = (words: readonly string[]): string =>
  words.length < 3
    ? words.join(f("limit.or"))
    : [words.slice(0, -1).join(", "), words.at(-1)].join(f("limit.or"));
