import { readCases } from "../../schemas/conformance/case.ts";
import { type Outcome, runCase } from "../../schemas/conformance/run-case.ts";

/** What a case came to in the page; a case of the meta-schema is not run there. */
export interface PageCase {
  readonly title: string;
  readonly outcome: Outcome | string;
}

export interface PageRun {
  readonly cases: readonly PageCase[];
  /** Whether the page let a text become code: the policy it is served under forbids it. */
  readonly compiles: boolean;
}

declare global {
  interface Window {
    conformance?: PageRun;
  }
}

const compiles = (): boolean => {
  try {
    return new Function("return true")() === true;
  } catch {
    return false;
  }
};

const outcomeOf = (...[file, one]: Parameters<typeof runCase>): Outcome | string => {
  try {
    return runCase(file, one);
  } catch (error) {
    return String(error);
  }
};

const files = readCases(
  import.meta.glob<string>("../../schemas/conformance/*.json", {
    query: "?raw",
    import: "default",
    eager: true,
  }),
);

window.conformance = {
  compiles: compiles(),
  // No browser compiles a schema, so the cases of the meta-schema run in Node alone.
  cases: files.flatMap((file) =>
    file.cases
      .filter(({ expect }) => expect.shape === undefined || expect.shape.length === 0)
      .map((one) => ({ title: `${one.rule} ${one.name}`, outcome: outcomeOf(file, one) })),
  ),
};
