import { ChoiceEdit, OpenBlank, TextEdit } from "../editor/blanks.tsx";
import { iv } from "../messages/intervals.ts";
import { useInterval } from "./interval-desk.tsx";
import { Line } from "./line.tsx";

/** What it is called, for which assets it is, and by which checklist they are checked. */
export const AboutSentences = () => {
  const { draft, apply, types, checklists } = useInterval();
  const type = types.find(({ assetType }) => assetType === draft.assetType);
  const checklist = checklists.find(({ id }) => id === draft.checklist);
  const issued = checklists.filter(({ status }) => status === "issued");
  return (
    <>
      <Line
        name="called"
        verb={iv("verb.called")}
        editors={{
          title: () => (
            <TextEdit
              label={iv("l.title")}
              value={draft.title}
              onTake={(text) => {
                if (text.trim() === "") return iv("w.needed");
                apply({ ...draft, title: text.trim() });
                return undefined;
              }}
            />
          ),
        }}
      >
        <OpenBlank id="title">{draft.title || iv("s.no-title")}</OpenBlank>
      </Line>
      <Line
        name="for"
        verb={iv("verb.for")}
        editors={{
          type: () => (
            <ChoiceEdit
              label={iv("l.type")}
              choices={types.map(({ assetType, title }) => ({ value: assetType, label: title }))}
              chosen={draft.assetType}
              onChoose={(assetType) => {
                const { covers: _, ...rest } = draft;
                apply({ ...rest, assetType });
              }}
            />
          ),
          checklist: () => (
            <ChoiceEdit
              label={iv("l.checklist")}
              choices={issued.map(({ id, document }) => ({ value: id, label: document.title }))}
              chosen={draft.checklist}
              onChoose={(id) => apply({ ...draft, checklist: id })}
            />
          ),
        }}
      >
        <OpenBlank id="type">{type?.title ?? (draft.assetType || iv("s.no-type"))}</OpenBlank>
        {`, ${iv("s.checked-by")} `}
        <OpenBlank id="checklist">
          {checklist?.document.title ?? (draft.checklist || iv("s.no-checklist"))}
        </OpenBlank>
      </Line>
    </>
  );
};
