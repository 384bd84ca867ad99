/** All that the command line touches outside itself: `cli.ts` gives the real ones, tests their own. */
export interface Io {
  readonly stdin: AsyncIterable<Uint8Array>;
  /** Writes a line to standard output; resolves when the reader can take more. */
  readonly out: (line: string) => Promise<void>;
  readonly err: (line: string) => void;
  /** Folder of the estate's database. */
  readonly data: string;
  /** Milliseconds since the Unix epoch. */
  readonly clock: () => number;
}

export const DONE = 0;
/** What was asked or given is not right: said on standard error. */
export const NOT_RIGHT = 2;

/** The command line itself is not right: answered with the usage of the verb. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}

/** A verb of the command line: gives the exit status. */
export interface Verb {
  readonly usage: string;
  readonly run: (args: readonly string[], io: Io) => Promise<number>;
}
