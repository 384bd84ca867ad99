const PARTS = /[\p{L}\p{N}]+/gu;

/** Words in lower case: as written between spaces, and their parts of letters and digits. */
export function wordsOf(...texts: readonly (string | null | undefined)[]): readonly string[] {
  const words = new Set<string>();
  for (const text of texts) {
    if (text === null || text === undefined) continue;
    for (const word of text.toLowerCase().split(/\s+/u)) {
      if (word === "") continue;
      words.add(word);
      for (const part of word.match(PARTS) ?? []) words.add(part);
    }
  }
  return [...words].sort();
}

/** In lower case with the digits padded, so that 2 comes before 10. */
export const numberOrder = (number: string): string =>
  number.toLowerCase().replace(/\d+/g, (digits) => digits.padStart(12, "0"));

export const numberKey = (number: string): string => number.trim().toLowerCase();
