import {
  FieldPair,
  LeafWords,
  LineField,
  PlaceHeading,
  Point,
  SelectField,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import { POINT_KINDS, type Problem, pointKind } from "@roundbook/schemas";
import { useState } from "react";
import { e } from "../messages/editor.ts";
import {
  addGroup,
  addPoint,
  changeGroup,
  movePoint,
  pageOrder,
  removeGroup,
} from "../model/commands.ts";
import { limitSentence } from "../model/limit-sentence.ts";
import { useDesk } from "./desk.tsx";
import { PointPanel } from "./point-panel.tsx";
import { pointOf } from "./problem-place.ts";

interface ListProps {
  readonly opened: string | null;
  readonly onOpen: (name: string | null) => void;
  readonly problems: readonly Problem[];
}

/** Every point of the page, group by group; the open one shows its sentences. */
export const PointList = ({ opened, onOpen, problems }: ListProps) => {
  const { document, apply, setOpen } = useDesk();
  const go = (name: string | null) => {
    setOpen(null);
    onOpen(name);
  };
  return (
    <>
      {pageOrder(document).map(({ group, points }, at) => {
        const found = document.groups?.find((one) => one.id === group);
        return (
          <section key={group ?? ""}>
            <PlaceHeading
              number={String(at + 1)}
              title={found?.title ?? e("ed.loose")}
              aside={found?.groupAnswer ? e("ed.group-answer") : undefined}
            />
            {points.map((name, index) => {
              const point = document.properties[name];
              if (!point) return null;
              const first = problems.findIndex((one) => pointOf(document, one) === name);
              const summary = (point.limits ?? [])
                .slice(0, 1)
                .map((limit) => limitSentence(point, limit))
                .join("");
              return (
                // Alt and the arrows move the point that has the focus, whichever part has it.
                // biome-ignore lint/a11y/noStaticElementInteractions: a shortcut, not a control
                <div
                  key={name}
                  onKeyDown={(event) => {
                    if (!event.altKey || !/^Arrow(Up|Down)$/.test(event.key)) return;
                    event.preventDefault();
                    apply(movePoint(document, name, event.key === "ArrowUp" ? -1 : 1));
                  }}
                >
                  <Point
                    id={`point-${name}`}
                    number={`${at + 1}.${index + 1}`}
                    question={point.title}
                    note={
                      opened === name ? e("ed.moves") : summary || e(`kind.${pointKind(point)}`)
                    }
                    open={opened === name}
                    onToggle={() => go(opened === name ? null : name)}
                    problem={
                      first < 0
                        ? undefined
                        : { number: first + 1, label: e("ed.problem", { number: first + 1 }) }
                    }
                    flush
                  >
                    <PointPanel name={name} point={point} onGo={go} />
                  </Point>
                </div>
              );
            })}
            {group !== null && <GroupWords id={group} />}
          </section>
        );
      })}
      <AddLine onAdded={go} />
    </>
  );
};

const GroupWords = ({ id }: { readonly id: string }) => {
  const { document, apply } = useDesk();
  const group = document.groups?.find((one) => one.id === id);
  if (!group) return null;
  return (
    <LeafWords>
      <WordList>
        <WordButton
          quiet
          onClick={() => apply(changeGroup(document, id, { groupAnswer: !group.groupAnswer }))}
        >
          {e(group.groupAnswer ? "ed.group-alone" : "ed.group-answer")}
        </WordButton>
        <WordButton quiet onClick={() => apply(removeGroup(document, id))}>
          {e("ed.group-remove")}
        </WordButton>
      </WordList>
    </LeafWords>
  );
};

/** The next point or group: what it asks, for what, and in which group. */
const AddLine = ({ onAdded }: { readonly onAdded: (name: string) => void }) => {
  const { document, apply } = useDesk();
  const groups = document.groups ?? [];
  const [kind, setKind] = useState<(typeof POINT_KINDS)[number]>("check");
  const [title, setTitle] = useState("");
  const [group, setGroup] = useState<string>();
  const chosen = groups.some(({ id }) => id === group) ? group : groups.at(-1)?.id;
  const add = () => {
    const words = title.trim() || e(`new.${kind}`);
    const made = addPoint(document, kind, words, chosen ?? null);
    apply(made.document);
    setTitle("");
    onAdded(made.name);
  };
  return (
    <section className="add-point">
      <PlaceHeading title={e("ed.add-point")} />
      <LeafWords>
        <LineField
          label={e("l.question")}
          autoComplete="off"
          placeholder={e(`new.${kind}`)}
          value={title}
          onChange={(event) => setTitle(event.target.value)}
          onKeyDown={(event) => event.key === "Enter" && add()}
        />
        <FieldPair>
          <SelectField
            label={e("l.kind")}
            options={POINT_KINDS.map((value) => ({ value, label: e(`kind.${value}`) }))}
            value={kind}
            onChange={(event) => setKind(event.target.value as typeof kind)}
          />
          {groups.length > 1 && (
            <SelectField
              label={e("ed.group-title")}
              options={groups.map(({ id, title: name }) => ({ value: id, label: name }))}
              value={chosen}
              onChange={(event) => setGroup(event.target.value)}
            />
          )}
        </FieldPair>
        <WordList>
          <WordButton onClick={add}>{e("ed.add-point")}</WordButton>
          <WordButton
            onClick={() => {
              apply(addGroup(document, title.trim() || e("ed.new-group")));
              setTitle("");
              setGroup(undefined);
            }}
          >
            {e("ed.add-group")}
          </WordButton>
        </WordList>
      </LeafWords>
    </section>
  );
};
