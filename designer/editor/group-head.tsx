import {
  LeafWords,
  PlaceHeading,
  Sentence,
  SentencePanel,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import { useEffect, useState } from "react";
import { e } from "../messages/editor.ts";
import { changeGroup, moveGroup, removeGroup } from "../model/commands.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { KeepAsBlock } from "./keep-as-block.tsx";
import { RepeatSentence } from "./repeat-sentence.tsx";

type Group = NonNullable<DraftDocument["groups"]>[number];

/** A group's heading; the word at its right opens what can be changed about it. */
export const GroupHead = ({
  number,
  group,
}: {
  readonly number: string;
  readonly group: Group;
}) => {
  const { open, setOpen } = useDesk();
  const [shown, setShown] = useState(false);
  const within = open?.startsWith(`groups/${group.id}/`) === true;
  // What was opened once stays while its blanks close: several things may be changed in a row.
  useEffect(() => {
    if (within) setShown(true);
  }, [within]);
  const isOpen = shown || within;
  const toggle = () => {
    setShown(!isOpen);
    setOpen(isOpen ? null : `groups/${group.id}/title`);
  };
  const answered = e(group.groupAnswer ? "ed.group-answer" : "ed.group-alone");
  return (
    <>
      <PlaceHeading
        number={number}
        title={group.title}
        aside={
          <WordButton quiet aria-expanded={isOpen} onClick={toggle}>
            {group.repeat ? e("ed.group-each", { each: group.repeat.each }) : answered}
          </WordButton>
        }
      />
      {isOpen && <GroupPanel group={group} />}
    </>
  );
};

const GroupPanel = ({ group }: { readonly group: Group }) => {
  const { document, apply, setOpen } = useDesk();
  const id = `groups/${group.id}/title`;
  const opened = useOpened({
    [id]: () => (
      <TextEdit
        label={e("ed.group-title")}
        value={group.title}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          apply(changeGroup(document, group.id, { title: text.trim() }));
          return undefined;
        }}
      />
    ),
  });
  return (
    <>
      <SentencePanel label={group.title}>
        <Sentence verb={e("verb.is-called")} opened={opened}>
          <OpenBlank id={id}>{group.title}</OpenBlank>
        </Sentence>
        <RepeatSentence group={group} />
      </SentencePanel>
      <LeafWords>
        <WordList>
          {!group.repeat && (
            <WordButton
              onClick={() =>
                apply(changeGroup(document, group.id, { groupAnswer: !group.groupAnswer }))
              }
            >
              {e(group.groupAnswer ? "ed.group-make-alone" : "ed.group-make-answer")}
            </WordButton>
          )}
          <WordButton onClick={() => apply(moveGroup(document, group.id, -1))}>
            {e("ed.up")}
          </WordButton>
          <WordButton onClick={() => apply(moveGroup(document, group.id, 1))}>
            {e("ed.down")}
          </WordButton>
          <WordButton
            onClick={() => {
              setOpen(null);
              apply(removeGroup(document, group.id));
            }}
          >
            {e("ed.group-remove")}
          </WordButton>
        </WordList>
        <KeepAsBlock group={group.id} />
        {group.groupAnswer && <p className="second">{e("ed.group-about")}</p>}
      </LeafWords>
    </>
  );
};
