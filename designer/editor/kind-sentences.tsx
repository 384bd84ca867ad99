import { Sentence } from "@roundbook/runner/form";
import { type PointDefinition, type PointKind, pointKind } from "@roundbook/schemas";
import { Fragment } from "react";
import { e } from "../messages/editor.ts";
import { changeKind } from "../model/change-kind.ts";
import { changePoint } from "../model/commands.ts";
import { KIND_GROUPS } from "../model/kind-groups.ts";
import { ChoiceEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import {
  calculatePart,
  type KindPart,
  optionsPart,
  type PartOf,
  quantityPart,
  rangePart,
  severalPart,
} from "./kind-parts.tsx";

interface Props {
  readonly name: string;
  readonly point: PointDefinition;
  /** Where the point goes on under another name. */
  readonly onGo: (name: string) => void;
}

/** What is to be said of each kind, in the order of the sentence. */
const partsOf = (kind: PointKind): readonly ((of: PartOf) => KindPart)[] => {
  switch (kind) {
    case "reading":
    case "sample":
      return [quantityPart];
    case "readings":
      return [quantityPart, severalPart];
    case "calculated":
      return [quantityPart, calculatePart];
    case "graded":
      return [rangePart];
    case "choice":
    case "choices":
      return [optionsPart];
    case "check":
    case "count":
    case "date":
    case "text":
    case "photo":
    case "signature":
      return [];
  }
};

/** The question itself, and what kind of answer it asks for. */
export const KindSentences = ({ name, point, onGo }: Props) => {
  const { document, apply, retired } = useDesk();
  const kind = pointKind(point);
  const worked = kind === "calculated";
  const id = (part: string) => `${name}/${part}`;
  const change = (next: (point: PointDefinition) => PointDefinition) =>
    apply(changePoint(document, name, next));
  const parts = partsOf(kind).map((part) => part({ document, point, id, change }));
  const take = (to: PointKind) => {
    const made = changeKind(document, name, to, retired);
    apply(made.document);
    if (made.name !== name) onGo(made.name);
  };
  const opened = useOpened({
    ...Object.assign({}, ...parts.map(({ editors }) => editors)),
    [id("title")]: () => (
      <TextEdit
        label={e("l.question")}
        value={point.title}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          change((one) => ({ ...one, title: text.trim() }));
          return undefined;
        }}
      />
    ),
    [id("kind")]: () =>
      KIND_GROUPS.map((group) => (
        <ChoiceEdit
          key={group.id}
          label={e(`kinds.${group.id}`)}
          choices={group.kinds.map((value) => ({ value, label: e(`kind.${value}`) }))}
          chosen={kind}
          onChoose={take}
        />
      )),
    [id("help")]: () => (
      <TextEdit
        many
        label={e("l.help")}
        value={point.description ?? ""}
        onTake={(text) => {
          change(({ description: _, ...rest }) =>
            text.trim() === "" ? rest : { ...rest, description: text.trim() },
          );
          return undefined;
        }}
      />
    ),
  });
  return (
    <>
      <Sentence verb={e(worked ? "verb.counts" : "verb.asks")} opened={opened}>
        <OpenBlank id={id("title")}>{point.title}</OpenBlank>{" "}
        {e(worked ? "s.counts-as" : "s.asks-for")}{" "}
        <OpenBlank id={id("kind")}>{e(`kind.${kind}`)}</OpenBlank>
        {parts.map(({ words }, at) => (
          // The parts of a kind are always the same, in the same order.
          <Fragment key={at}>{words}</Fragment>
        ))}
      </Sentence>
      <Sentence verb={e("verb.helps")}>
        <OpenBlank id={id("help")}>{point.description ?? e("s.no-help")}</OpenBlank>
      </Sentence>
    </>
  );
};
