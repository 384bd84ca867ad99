import { PlaceHeading, Point, useWide } from "@roundbook/runner/form";
import { type PointDefinition, pointKind } from "@roundbook/schemas";
import type { KeyboardEvent } from "react";
import { e } from "../messages/editor.ts";
import { movePoint, pageOrder } from "../model/commands.ts";
import { pointNote } from "../model/limit-sentence.ts";
import { AddLine } from "./add-line.tsx";
import { useDesk } from "./desk.tsx";
import { GroupHead } from "./group-head.tsx";
import { IncludedHead, IncludedPoint } from "./included-points.tsx";
import { PointPanel } from "./point-panel.tsx";
import { type Footnoted, pointOf } from "./problem-place.ts";

interface ListProps {
  readonly opened: string | null;
  readonly onOpen: (name: string | null) => void;
  readonly problems: readonly Footnoted[];
}

/** Every point of the page, group by group; the open one shows its sentences. */
export const PointList = ({ opened, onOpen, problems }: ListProps) => {
  const { document, whole, setOpen } = useDesk();
  const go = (name: string | null) => {
    setOpen(null);
    onOpen(name);
  };
  return (
    <>
      {pageOrder(whole).map(({ group, points }, at) => {
        const found = document.groups?.find((one) => one.id === group);
        const number = String(at + 1);
        return (
          <section key={group ?? ""}>
            {found ? (
              <GroupHead number={number} group={found} />
            ) : group === null ? (
              <PlaceHeading
                number={number}
                title={e(document.groups?.length ? "ed.loose" : "ed.points-only")}
              />
            ) : (
              <IncludedHead number={number} group={group} />
            )}
            {points.map((name, index) => {
              const shown = {
                name,
                number: `${number}.${index + 1}`,
                problems: problems.filter((one) => pointOf(whole, one.problem) === name),
              };
              const point = document.properties[name];
              return point ? (
                <PointLine key={name} {...{ point, opened: opened === name, go }} {...shown} />
              ) : (
                <IncludedPoint key={name} {...shown} />
              );
            })}
          </section>
        );
      })}
      <AddLine onAdded={go} />
    </>
  );
};

/** A point that moves into another group is another element: the focus follows it there. */
const keepFocus = (name: string) =>
  requestAnimationFrame(() => {
    const point = window.document.getElementById(`edit-${name}`);
    if (point && !point.contains(window.document.activeElement))
      point.querySelector<HTMLElement>("button, [tabindex]")?.focus();
  });

const PointLine = ({
  name,
  point,
  number,
  opened,
  go,
  problems,
}: {
  readonly name: string;
  readonly point: PointDefinition;
  readonly number: string;
  readonly opened: boolean;
  readonly go: (name: string | null) => void;
  readonly problems: readonly Footnoted[];
}) => {
  const { document, apply } = useDesk();
  const wide = useWide();
  const [first] = problems;
  const onKeyDown = (event: KeyboardEvent) => {
    if (!event.altKey || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) return;
    event.preventDefault();
    apply(movePoint(document, name, event.key === "ArrowUp" ? -1 : 1));
    keepFocus(name);
  };
  return (
    // Alt and the arrows move the point that has the focus, whichever part of it has it.
    // biome-ignore lint/a11y/noStaticElementInteractions: a shortcut, not a control
    <div onKeyDown={onKeyDown}>
      <Point
        id={`edit-${name}`}
        number={number}
        question={point.title}
        note={
          opened && wide
            ? e("ed.moves")
            : pointNote(document, point) || e(`kind.${pointKind(point)}`)
        }
        open={opened}
        onToggle={() => go(opened ? null : name)}
        problem={
          first && { number: first.number, label: e("ed.problem", { number: first.number }) }
        }
        flush
      >
        <PointPanel name={name} point={point} problems={problems} onGo={go} />
      </Point>
    </div>
  );
};
