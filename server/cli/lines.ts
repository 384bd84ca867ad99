export const LONGEST_LINE = 8 * 1024 * 1024;

export interface Line {
  /** From 1. */
  readonly number: number;
  /** Null when the line is longer than `LONGEST_LINE` or no UTF-8. */
  readonly text: string | null;
  readonly fault: "line-too-long" | "not-utf8" | null;
}

const NEWLINE = 0x0a;
const UTF8 = new TextDecoder("utf-8", { fatal: true });

function lineOf(number: number, parts: readonly Uint8Array[], length: number): Line {
  if (length > LONGEST_LINE) return { number, text: null, fault: "line-too-long" };
  try {
    return { number, text: UTF8.decode(Buffer.concat(parts, length)), fault: null };
  } catch {
    return { number, text: null, fault: "not-utf8" };
  }
}

/** Lines of a stream of bytes, one at a time; an endless line costs no more memory than a long one. */
export async function* readLines(stream: AsyncIterable<Uint8Array>): AsyncGenerator<Line> {
  let parts: Uint8Array[] = [];
  let length = 0;
  let number = 1;
  for await (const chunk of stream) {
    let start = 0;
    while (start < chunk.length) {
      const found = chunk.indexOf(NEWLINE, start);
      const end = found < 0 ? chunk.length : found;
      length += end - start;
      if (length <= LONGEST_LINE) parts.push(chunk.subarray(start, end));
      start = end + 1;
      if (found < 0) break;
      yield lineOf(number++, parts, length);
      parts = [];
      length = 0;
    }
  }
  if (length > 0) yield lineOf(number, parts, length);
}
