import type { FormulaContext } from "../engine-type.ts";
import type { Given } from "./random-formulas.ts";

/** A formula's context from values by full name. */
export const contextOf = (given: Given): FormulaContext => {
  const part = (prefix: string) =>
    Object.assign(
      Object.create(null),
      Object.fromEntries(
        [...given]
          .filter(([name]) => name.startsWith(prefix) && (prefix !== "" || !name.includes(".")))
          .map(([name, value]) => [name.slice(prefix.length), value]),
      ),
    );
  return { asset: part("asset."), answers: part("answers."), values: part("") };
};
