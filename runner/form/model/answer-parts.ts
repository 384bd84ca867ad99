import {
  type Answer,
  isAbsent,
  isReading,
  isSample,
  type Reading,
  type Signature,
} from "@roundbook/schemas";

const isObject = (answer: Answer | undefined): answer is Extract<Answer, object> =>
  typeof answer === "object" && answer !== null;

export const isSignature = (answer: Answer | undefined): answer is Signature =>
  isObject(answer) && Object.hasOwn(answer, "signedBy");

/** The readings an answer holds: one, several, or the result of a sample. */
export function readingsOf(answer: Answer | undefined): readonly Reading[] {
  if (isReading(answer)) return [answer];
  if (isSample(answer)) return answer.result === undefined ? [] : [answer.result];
  if (!Array.isArray(answer)) return [];
  return (answer as readonly (Reading | string)[]).flatMap((one) =>
    typeof one === "object" && isReading(one) ? [one] : [],
  );
}

/** The words of a list: hashes of photos, or what was chosen. */
export const wordsIn = (answer: Answer | undefined): readonly string[] =>
  Array.isArray(answer)
    ? (answer as readonly unknown[]).filter((one): one is string => typeof one === "string")
    : [];

/** Hashes of the pictures an answer holds: photos, or the drawing beside a signature. */
export function picturesIn(kind: string, answer: Answer | undefined): readonly string[] {
  if (kind === "photo") return wordsIn(answer);
  return isSignature(answer) && !isAbsent(answer) && answer.drawing !== undefined
    ? [answer.drawing]
    : [];
}
