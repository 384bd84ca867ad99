import { type Checklist, type Judgement, splitAnswerName } from "@roundbook/schemas";

/** What a judged point is called: its title, and in a repeat the member's: "Gap, left leaf". */
export function answerTitle(
  { properties, groups = [] }: Checklist,
  { repeats = {} }: Pick<Judgement, "repeats">,
  name: string,
): string {
  const { point, member } = splitAnswerName(name);
  const title = properties[point]?.title ?? point;
  if (member === null) return title;
  const group = groups.find(({ points }) => points.includes(point));
  const known = repeats[group?.id ?? ""]?.members.find(({ id }) => id === member);
  return `${title}, ${known?.title ?? member}`;
}
