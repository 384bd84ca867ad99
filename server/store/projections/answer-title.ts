import {
  type Checklist,
  type Judgement,
  repeatsByPoint,
  splitAnswerName,
} from "@roundbook/schemas";

/** What a judged point is called: its title, and in a repeat the member's: "Gap, left leaf". */
export function answerTitle(
  document: Checklist,
  { repeats = {} }: Pick<Judgement, "repeats">,
  name: string,
): string {
  const { point, member } = splitAnswerName(name);
  const title = document.properties[point]?.title ?? point;
  if (member === null) return title;
  const group = repeatsByPoint(document).get(point)?.group ?? "";
  const known = repeats[group]?.members.find(({ id }) => id === member);
  return `${title}, ${known?.title ?? member}`;
}
