import {
  FieldPair,
  LeafWords,
  LineField,
  PlaceHeading,
  SelectField,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import type { PointKind } from "@roundbook/schemas";
import { useState } from "react";
import { e } from "../messages/editor.ts";
import { addGroup, addPoint } from "../model/commands.ts";
import { KINDS_IN_ORDER } from "../model/kind-groups.ts";
import { useDesk } from "./desk.tsx";

/** The next point or group: what it asks, for what, and in which group. */
export const AddLine = ({ onAdded }: { readonly onAdded: (name: string) => void }) => {
  const { document, apply, retired } = useDesk();
  const groups = document.groups ?? [];
  const [kind, setKind] = useState<PointKind>("check");
  const [title, setTitle] = useState("");
  const [group, setGroup] = useState<string>();
  const chosen = groups.some(({ id }) => id === group) ? group : groups.at(-1)?.id;
  const add = () => {
    const words = title.trim() || e(`new.${kind}`);
    const made = addPoint(document, kind, words, chosen ?? null, retired);
    apply(made.document);
    setTitle("");
    onAdded(made.name);
  };
  return (
    <section className="add-point">
      <PlaceHeading title={e("ed.add-title")} />
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
            options={KINDS_IN_ORDER.map((value) => ({ value, label: e(`kind.${value}`) }))}
            value={kind}
            onChange={(event) => setKind(event.target.value as PointKind)}
          />
          {groups.length > 1 && (
            <SelectField
              label={e("ed.add-in")}
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
