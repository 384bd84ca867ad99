import {
  type Failure,
  type FormulaContext,
  failure,
  isFailure,
  type NameTypes,
  type Scalar,
} from "./engine-type.ts";

/** Which part of the context a full name reads, and under which key. */
const partOf = (name: string): readonly ["asset" | "answers" | "values", string] => {
  if (name.startsWith("asset.")) return ["asset", name.slice("asset.".length)];
  if (name.startsWith("answers.")) return ["answers", name.slice("answers.".length)];
  return ["values", name];
};

/**
 * Reads a name at evaluation. What is not there, or not of the declared type, is a failure: a
 * particular nobody wrote down never stands as zero or as an empty text.
 */
export const readName = (
  name: string,
  names: NameTypes,
): ((context: FormulaContext) => Scalar | Failure) => {
  const [part, key] = partOf(name);
  const expected = names.get(name)?.type ?? "number";
  const missing = failure("missing", { name });
  const wrongType = failure("wrong-type", { name, expected });
  return (context) => {
    const value = context[part][key];
    if (typeof value === expected && typeof value !== "object") {
      return typeof value === "number" && !Number.isFinite(value) ? wrongType : (value ?? missing);
    }
    // A context with a prototype would show inherited functions here: they are not values.
    if (value === undefined || value === null || typeof value === "function") return missing;
    return isFailure(value) ? value : wrongType;
  };
};
