/** Words CEL keeps for itself (cel-spec, "Identifiers"): refused as names of anything. */
export const RESERVED_NAMES: ReadonlySet<string> = new Set(
  (
    "as break const continue else false for function if import in let loop namespace null package " +
    "prototype return true var void while"
  ).split(" "),
);

/** Words with a meaning in our profile: refused as names of values, which stand bare. */
export const TAKEN_NAMES: ReadonlySet<string> = new Set([
  "asset",
  "answers",
  "min",
  "max",
  "abs",
  "round",
]);
