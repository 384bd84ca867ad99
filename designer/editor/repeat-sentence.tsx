import { Sentence } from "@roundbook/runner/form";
import type { RepeatDefinition } from "@roundbook/schemas";
import type { ReactNode } from "react";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { formulaWords } from "../model/formula-words.ts";
import { readNumber } from "../model/read-number.ts";
import { membersFrom, repeatHow, repeatOf, setRepeat } from "../model/repeat-edit.ts";
import { readCount } from "../model/several-edit.ts";
import { ChoiceEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { FormulaEdit } from "./formula-edit.tsx";

type Group = NonNullable<DraftDocument["groups"]>[number];
const MOST = 99;

/** Whether the points of a group are asked once, or for each of several: sockets, leaves, rungs. */
export const RepeatSentence = ({ group }: { readonly group: Group }) => {
  const { document, apply } = useDesk();
  const { repeat } = group;
  const how = repeatHow(repeat);
  const id = (part: string) => `groups/${group.id}/repeat/${part}`;
  const change = (next: (repeat: RepeatDefinition) => RepeatDefinition) =>
    repeat && apply(setRepeat(document, group.id, next(repeat)));
  const members = repeat?.members?.map(({ title }) => title) ?? [];
  const editors: Record<string, () => ReactNode> = {
    [id("how")]: () => (
      <ChoiceEdit
        label={e("l.repeat-how")}
        choices={(["once", "numbered", "named"] as const).map((value) => ({
          value,
          label: e(`repeat.${value}`),
        }))}
        chosen={how}
        onChoose={(to) => {
          const first = { each: e("new.each"), members: [e("new.left"), e("new.right")] };
          const next = to === "once" ? undefined : repeatOf(to, repeat, first);
          if (to !== how) apply(setRepeat(document, group.id, next));
        }}
      />
    ),
    [id("each")]: () => (
      <TextEdit
        label={e("l.repeat-each")}
        value={repeat?.each ?? ""}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          change((one) => ({ ...one, each: text.trim() }));
          return undefined;
        }}
      />
    ),
    [id("count")]: () => (
      <FormulaEdit
        label={e("l.repeat-count")}
        value={String(repeat?.count ?? "")}
        wanted={{ unit: "1" }}
        onTake={(text) => {
          const count = readCount(text, 1, MOST);
          if (count === undefined) return e("l.repeat-wrong");
          change((one) => ({ ...one, count }));
          return undefined;
        }}
      />
    ),
    [id("atMost")]: () => (
      <TextEdit
        label={e("l.repeat-most")}
        value={String(repeat?.atMost ?? "")}
        onTake={(text) => {
          const most = text.trim() === "" ? undefined : readNumber(text);
          const fits = Number.isInteger(most) && Number(most) >= 1 && Number(most) <= MOST;
          if (text.trim() !== "" && !fits) return e("l.repeat-wrong");
          change(({ atMost: _, ...rest }) =>
            most === undefined ? rest : { ...rest, atMost: most },
          );
          return undefined;
        }}
      />
    ),
    [id("members")]: () => (
      <TextEdit
        many
        label={e("l.repeat-members")}
        value={members.join("\n")}
        onTake={(text) => {
          const titles = [...new Set(text.split("\n").map((one) => one.trim()))].filter(Boolean);
          if (titles.length === 0) return e("l.needed");
          change((one) => ({ ...one, members: membersFrom(titles, one.members) }));
          return undefined;
        }}
      />
    ),
  };
  const count = repeat?.count;
  return (
    <Sentence verb={e("verb.repeats")} opened={useOpened(editors)}>
      <OpenBlank id={id("how")}>{e(`repeat.${how}`)}</OpenBlank>
      {repeat && (
        <>
          {", "}
          <OpenBlank id={id("each")}>{repeat.each}</OpenBlank>
          {": "}
          {repeat.members ? (
            <OpenBlank id={id("members")}>{members.join(", ")}</OpenBlank>
          ) : (
            <>
              <OpenBlank id={id("count")}>
                {typeof count === "string" ? formulaWords(document, count) : String(count ?? "…")}
              </OpenBlank>{" "}
              {e("s.of-them-all")}
              {", "}
              <OpenBlank id={id("atMost")}>
                {repeat.atMost === undefined
                  ? e("s.no-most")
                  : e("s.at-most", { count: repeat.atMost })}
              </OpenBlank>
            </>
          )}
        </>
      )}
    </Sentence>
  );
};
