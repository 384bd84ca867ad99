/**
 * One thing wrong with what a user gave us, as data: apps and the command line word it.
 * `pointer` is an RFC 6901 JSON Pointer into the value that was given ("" is the whole value).
 */
export interface Problem {
  readonly pointer: string;
  readonly code: string;
  readonly params: Readonly<Record<string, ProblemParam>>;
}

export type ProblemParam = string | number | boolean | null | readonly string[] | readonly number[];

/** A sentence as data: a code of the message catalogue and the values it mentions. */
export interface Explanation {
  readonly code: string;
  readonly params: Readonly<Record<string, ProblemParam>>;
  /** What moved the result afterwards, in order; absent when nothing did. */
  readonly moved?: readonly Explanation[];
}

export const problem = (
  pointer: string,
  code: string,
  params: Readonly<Record<string, ProblemParam>> = {},
): Problem => ({ pointer, code, params });

/** Appends reference tokens to a JSON Pointer, escaped as RFC 6901 §3 asks. */
export const at = (pointer: string, ...tokens: readonly (string | number)[]): string =>
  tokens.reduce<string>(
    (path, token) => `${path}/${String(token).replaceAll("~", "~0").replaceAll("/", "~1")}`,
    pointer,
  );

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };
