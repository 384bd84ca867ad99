import { type Answers, type EntryOf, isSample } from "@roundbook/schemas";

/** An inspection with the result of one of its samples, in the place of any that came before. */
export function withResult(
  inspection: EntryOf<"inspection">,
  { point, result }: EntryOf<"result-received">["body"],
): EntryOf<"inspection"> {
  const answers = inspection.body.answers as Answers;
  const sample = Object.hasOwn(answers, point) ? answers[point] : undefined;
  if (!isSample(sample)) return inspection;
  const body = {
    ...inspection.body,
    answers: { ...answers, [point]: { ...sample, result } },
  } as unknown as typeof inspection.body;
  return { ...inspection, body };
}
