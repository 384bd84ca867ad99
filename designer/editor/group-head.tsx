import {
  LeafWords,
  PlaceHeading,
  SentencePanel,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import { e } from "../messages/editor.ts";
import { changeGroup, moveGroup, removeGroup } from "../model/commands.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { TextEdit } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
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
  const { document, apply, open, setOpen } = useDesk();
  const id = `groups/${group.id}`;
  const isOpen = open === id || open?.startsWith(`${id}/`) === true;
  return (
    <>
      <PlaceHeading
        number={number}
        title={group.title}
        aside={
          <WordButton quiet aria-expanded={isOpen} onClick={() => setOpen(isOpen ? null : id)}>
            {group.repeat
              ? e("ed.group-each", { each: group.repeat.each })
              : e(group.groupAnswer ? "ed.group-answer" : "ed.group-alone")}
          </WordButton>
        }
      />
      {isOpen && (
        <>
          <SentencePanel label={group.title}>
            <RepeatSentence group={group} />
          </SentencePanel>
          <LeafWords>
            {open === id && (
              <TextEdit
                label={e("ed.group-title")}
                value={group.title}
                onTake={(text) => {
                  if (text.trim() === "") return e("l.needed");
                  apply(changeGroup(document, group.id, { title: text.trim() }));
                  return undefined;
                }}
              />
            )}
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
            {group.groupAnswer && <p className="second">{e("ed.group-about")}</p>}
          </LeafWords>
        </>
      )}
    </>
  );
};
