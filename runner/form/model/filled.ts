import type { Answer, Answers, Evidence, EvidenceItem } from "@roundbook/schemas";

/** What a person has written so far. A point that is not in `answers` is one nobody answered. */
export interface Filled {
  readonly answers: Answers;
  readonly evidence: Evidence;
  /** Points answered by one declaration for their group. */
  readonly declared: readonly string[];
}

/** As react-hook-form holds it: a cleared answer stays behind as `undefined`. */
export interface FilledValues {
  answers: Record<string, unknown>;
  evidence: Record<string, unknown>;
  declared: string[];
}

const withoutHoles = <T>(values: Record<string, unknown> | undefined): Record<string, T> =>
  Object.fromEntries(
    Object.entries(values ?? {}).filter(([, value]) => value !== undefined),
  ) as Record<string, T>;

export const toFilled = (values: Partial<FilledValues>): Filled => ({
  answers: withoutHoles<Answer>(values.answers),
  evidence: withoutHoles<readonly EvidenceItem[]>(values.evidence),
  declared: values.declared ?? [],
});
