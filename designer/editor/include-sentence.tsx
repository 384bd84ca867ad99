import { Sentence } from "@roundbook/runner/form";
import { b } from "../messages/blocks.ts";
import { includedBlocks, setIncluded } from "../model/include-edit.ts";
import { ManyEdit, OpenBlank, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

/** Which blocks of points the checklist takes in; nothing is said while there is none to take. */
export const IncludeSentence = () => {
  const { document, apply, blocks } = useDesk();
  const included = includedBlocks(document);
  const titles = new Map(blocks.map(({ name, title }) => [name, title]));
  const known = [...new Set([...titles.keys(), ...included])];
  const opened = useOpened({
    "include/blocks": () => (
      <ManyEdit
        label={b("include.label")}
        choices={known.map((value) => ({ value, label: titles.get(value) ?? value }))}
        chosen={included}
        onChange={(chosen) => apply(setIncluded(document, chosen, blocks))}
      />
    ),
  });
  if (known.length === 0) return null;
  const said = included.map((name) => `“${titles.get(name) ?? name}”`).join(", ");
  return (
    <Sentence verb={b("verb.takes-in")} opened={opened}>
      <OpenBlank id="include/blocks">
        {included.length > 0
          ? b("include.blocks", { count: included.length, titles: said })
          : b("include.none")}
      </OpenBlank>
    </Sentence>
  );
};
