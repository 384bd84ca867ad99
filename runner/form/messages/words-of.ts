import { type Blanks, fillBlanks } from "./translate.ts";

type WordMap = Readonly<Record<string, string>>;

/** Looks a sentence up by its code; the compiler checks the values its blanks ask for. */
export type Words<Map extends WordMap> = <Code extends keyof Map & string>(
  code: Code,
  ...params: [Blanks<Map[Code]>] extends [never]
    ? []
    : [Readonly<Record<Blanks<Map[Code]>, string | number>>]
) => string;

/** The wording of an app's own pages: a map of sentences with blanks. */
export const wordsOf =
  <const Map extends WordMap>(map: Map): Words<Map> =>
  (code, ...[params]) =>
    fillBlanks(map[code] ?? code, params ?? {});
