/** Joins the class names that hold; `undefined` when none does, so no empty attribute is printed. */
export function classes(...names: readonly (string | false | null | undefined)[]) {
  return names.filter(Boolean).join(" ") || undefined;
}
