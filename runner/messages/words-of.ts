import { type Blanks, fillBlanks } from "../form/index.ts";

type WordMap = Readonly<Record<string, string>>;

/** Looks a sentence up by its code; the compiler checks the values its blanks ask for. */
export type Words<Map extends WordMap> = <Code extends keyof Map & string>(
  code: Code,
  ...params: [Blanks<Map[Code]>] extends [never]
    ? []
    : [Readonly<Record<Blanks<Map[Code]>, string | number>>]
) => string;

export const wordsOf =
  <const Map extends WordMap>(map: Map): Words<Map> =>
  (code, ...[params]) =>
    fillBlanks(map[code] ?? code, params ?? {});
