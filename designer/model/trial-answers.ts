import type { Filled } from "@roundbook/runner/form";
import { splitAnswerName, validateAnswers } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

/** What was written in a trial, through every edit of what is tried. */
export interface TrialAnswers extends Filled {
  /** By name of the answer, the kind of point it was given to. */
  readonly kinds: Readonly<Record<string, string>>;
}

export const NOTHING_TRIED: TrialAnswers = {
  answers: {},
  evidence: {},
  declared: [],
  waits: {},
  kinds: {},
};

const kindOf = ({ properties }: DraftDocument, name: string): string | undefined => {
  const { point } = splitAnswerName(name);
  return Object.hasOwn(properties, point) ? properties[point]?.$ref : undefined;
};

/** Whether what was written under a name is still an answer to what is asked under it. */
const fitsIn = (document: DraftDocument, { answers, kinds }: TrialAnswers) => {
  const wrong = new Set(
    validateAnswers(document, answers).map(({ pointer }) => pointer.split("/")[1]),
  );
  return (name: string): boolean => {
    const kind = kindOf(document, name);
    return kind !== undefined && (kinds[name] ?? kind) === kind && !wrong.has(name);
  };
};

const only = <T>(of: Readonly<Record<string, T>>, wanted: (name: string) => boolean) =>
  Object.fromEntries(Object.entries(of).filter(([name]) => wanted(name)));

/** What of a trial's answers the document asks for. */
export const fittingAnswers = (document: DraftDocument, kept: TrialAnswers): Filled => {
  const fits = fitsIn(document, kept);
  return {
    answers: only(kept.answers, fits),
    evidence: only(kept.evidence, fits),
    declared: kept.declared.filter(fits),
    waits: only(kept.waits, fits),
  };
};

/**
 * The trial's answers with what is written now. What the document does not ask for at the moment is
 * kept aside: a point that is taken out and put back has its answer again.
 */
export const withAnswers = (
  document: DraftDocument,
  kept: TrialAnswers,
  now: Filled,
): TrialAnswers => {
  const fits = fitsIn(document, kept);
  const aside = (name: string) => !fits(name) && !Object.hasOwn(now.answers, name);
  const kinds = Object.keys(now.answers).map((name) => [name, kindOf(document, name) ?? ""]);
  return {
    answers: { ...only(kept.answers, aside), ...now.answers },
    evidence: { ...only(kept.evidence, aside), ...now.evidence },
    declared: [...kept.declared.filter(aside), ...now.declared],
    waits: { ...only(kept.waits, aside), ...now.waits },
    kinds: { ...kept.kinds, ...Object.fromEntries(kinds) },
  };
};
