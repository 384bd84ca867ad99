import type { Problem, RefusalCode } from "@roundbook/schemas";

/** Why a use-case would not do what it was asked; `http` alone turns these into statuses. */
export type RefusalKind =
  | "malformed"
  | "invalid"
  | "signed-out"
  | "forbidden"
  | "not-found"
  | "conflict"
  | "too-large"
  | "wrong-type"
  | "too-many";

/**
 * What a user may not do or got wrong. `code` names the case for programs, `problems` name the
 * places, `extra` carries what the asker needs to go on, such as the current draft.
 */
export class Refusal extends Error {
  readonly kind: RefusalKind;
  readonly code: RefusalCode;
  readonly problems: readonly Problem[];
  readonly extra: Readonly<Record<string, unknown>>;

  constructor(
    kind: RefusalKind,
    code: RefusalCode,
    problems: readonly Problem[] = [],
    extra: Readonly<Record<string, unknown>> = {},
  ) {
    super(code);
    this.name = "Refusal";
    this.kind = kind;
    this.code = code;
    this.problems = problems;
    this.extra = extra;
  }
}
