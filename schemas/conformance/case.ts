import type { Answers, Evidence, Particulars } from "../checklist/answer-types.ts";

/** A problem as a case expects it; of the parameters only those it names are looked at. */
export interface ExpectedProblem {
  readonly pointer: string;
  readonly code: string;
  readonly params?: Readonly<Record<string, unknown>>;
}

/** What is expected of a point: its verdict, or some of its members by name. */
export type ExpectedPoint = string | null | Readonly<Record<string, unknown>>;

/** What a case looks at; the rest is left alone. Lists of problems are whole, in any order. */
export interface Expected {
  readonly overall?: string | null;
  readonly points?: Readonly<Record<string, ExpectedPoint>>;
  readonly repeats?: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly scores?: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly complete?: boolean;
  readonly pending?: readonly string[];
  /** Of the judge. */
  readonly problems?: readonly ExpectedProblem[];
  /** Of the answers; none where this is left out. */
  readonly invalid?: readonly ExpectedProblem[];
  /** Errors of the linter; none where this is left out. */
  readonly lint?: readonly ExpectedProblem[];
  readonly warn?: readonly ExpectedProblem[];
  /** Of the meta-schema, which only Node compiles. */
  readonly shape?: readonly ExpectedProblem[];
}

/** One case: a checklist by name or written out, what is given with it, and what comes of it. */
export interface Case {
  /** Number of the rule of LANGUAGE.md that it expresses. */
  readonly rule: string;
  readonly name: string;
  readonly sheet?: string;
  readonly checklist?: Readonly<Record<string, unknown>>;
  /** Members that the runner adds to every checklist, left out of this one. */
  readonly without?: readonly string[];
  readonly particulars?: Particulars;
  readonly answers?: Answers;
  readonly evidence?: Evidence;
  readonly previous?: Answers;
  readonly on?: string;
  readonly expect: Expected;
}

export interface CaseFile {
  readonly title: string;
  readonly sheets: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly cases: readonly Case[];
}

/** Read with `JSON.parse`: as a module, `"__proto__"` would set a prototype. */
export const readCases = (files: Readonly<Record<string, string>>): readonly CaseFile[] =>
  Object.keys(files)
    .sort()
    .map((path) => JSON.parse(files[path] ?? "") as CaseFile);
