import type { Answer, Answers, Evidence, EvidenceItem } from "@roundbook/schemas";

/** A wait before a reading: instants in milliseconds UTC. */
export interface Wait {
  readonly startedAt: number;
  /** When the person read the instrument. */
  readonly readAt?: number;
}

/**
 * What a person has written so far, by the name of the answer. A point that is not in `answers` is
 * one nobody answered.
 */
export interface Filled {
  readonly answers: Answers;
  readonly evidence: Evidence;
  /** Points answered by one declaration for their group. */
  readonly declared: readonly string[];
  /** Waits that were started, so that a clock goes on where it was after a reload. */
  readonly waits: Readonly<Record<string, Wait>>;
}

/** As react-hook-form holds it: a cleared answer stays behind as `undefined`. */
export interface FilledValues {
  answers: Record<string, unknown>;
  evidence: Record<string, unknown>;
  declared: string[];
  waits: Record<string, unknown>;
}

const withoutHoles = <T>(values: Record<string, unknown> | undefined): Record<string, T> =>
  Object.fromEntries(
    Object.entries(values ?? {}).filter(([, value]) => value !== undefined),
  ) as Record<string, T>;

export const toFilled = (values: Partial<FilledValues>): Filled => ({
  answers: withoutHoles<Answer>(values.answers),
  evidence: withoutHoles<readonly EvidenceItem[]>(values.evidence),
  declared: values.declared ?? [],
  waits: withoutHoles<Wait>(values.waits),
});
