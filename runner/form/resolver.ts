import { type Checklist, type PatternEngine, validateAnswers } from "@roundbook/schemas";
import type { FieldErrors, Resolver } from "react-hook-form";
import { type FilledValues, toFilled } from "./model/filled.ts";

/** Validity only (is it a well-formed answer?): limits and completeness are the judge's. */
export const answersResolver =
  (document: Checklist, patterns: PatternEngine | undefined): Resolver<FilledValues> =>
  (values) => {
    const problems = validateAnswers(document, toFilled(values).answers, patterns);
    if (problems.length === 0) return { values, errors: {} };
    const answers: Record<string, { type: string }> = {};
    for (const { pointer, code } of problems)
      answers[pointer.split("/")[1] ?? ""] ??= { type: code };
    return { values: {}, errors: { answers } as unknown as FieldErrors<FilledValues> };
  };
