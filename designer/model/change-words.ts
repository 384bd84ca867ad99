import { canonicalize } from "@roundbook/schemas";
import { f } from "../messages/facts.ts";

/** How something was and how it is; one side only when it came or went. */
export interface WasAndIs {
  readonly was?: string;
  readonly is?: string;
}

/** Whether two parts are the same in the canonical form, which is what a hash covers. */
export const same = (a: unknown, b: unknown): boolean =>
  canonicalize(a ?? null) === canonicalize(b ?? null);

/** Two sides in words; the text of the document itself where words do not tell them apart. */
export const apart = (
  was: string | undefined,
  is: string | undefined,
  before: unknown,
  after: unknown,
): WasAndIs => {
  if ((was ?? "") === (is ?? ""))
    return {
      was: f("change.written", { text: canonicalize(before ?? null) }),
      is: f("change.written", { text: canonicalize(after ?? null) }),
    };
  return { ...(was ? { was } : {}), ...(is ? { is } : {}) };
};

/** What only one side says, in its words; all of it where the sides differ in their order alone. */
export const told = (
  had: readonly string[],
  has: readonly string[],
  before: unknown,
  after: unknown,
): WasAndIs => {
  const only = (facts: readonly string[], others: readonly string[]) =>
    facts.filter((fact) => !others.includes(fact)).join("; ");
  const [was, is] = [only(had, has), only(has, had)];
  return was === is
    ? apart(had.join("; "), has.join("; "), before, after)
    : apart(was, is, before, after);
};
