import { PlaceHeading, Point } from "@roundbook/runner/form";
import { pointKind } from "@roundbook/schemas";
import { b } from "../messages/blocks.ts";
import { e } from "../messages/editor.ts";
import { pointNote } from "../model/limit-sentence.ts";
import { useDesk } from "./desk.tsx";
import type { Footnoted } from "./problem-place.ts";

/** A group that a block brings: it says which, and is changed there. */
export const IncludedHead = ({
  number,
  group,
}: {
  readonly number: string;
  readonly group: string;
}) => {
  const { whole, blocks } = useDesk();
  const found = whole.groups?.find(({ id }) => id === group);
  const from = found?.points.flatMap((name) => whole.properties[name]?.block ?? [])[0];
  const title = blocks.find(({ name }) => name === from)?.title ?? from ?? "";
  return (
    <PlaceHeading
      number={number}
      title={found?.title ?? group}
      aside={b("group.from", { title })}
    />
  );
};

/** A point of a block in its place on the page, to read only. */
export const IncludedPoint = ({
  name,
  number,
  problems: [first],
}: {
  readonly name: string;
  readonly number: string;
  readonly problems: readonly Footnoted[];
}) => {
  const { document, whole, blocks } = useDesk();
  const point = whole.properties[name];
  if (!point) return null;
  const placed = document.groups?.some(({ points }) => points.includes(name));
  const title = blocks.find((block) => block.name === point.block)?.title ?? point.block ?? "";
  return (
    <Point
      id={`edit-${name}`}
      number={number}
      question={point.title}
      help={placed ? b("group.from", { title }) : undefined}
      note={pointNote(whole, point) || e(`kind.${pointKind(point)}`)}
      problem={first && { number: first.number, label: e("ed.problem", { number: first.number }) }}
    />
  );
};
