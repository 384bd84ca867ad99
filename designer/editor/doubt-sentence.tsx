import { printUnit, Sentence } from "@roundbook/runner/form";
import type { PointDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { readRange } from "../model/around-edit.ts";
import { changePoint } from "../model/commands.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

/** Readings that are asked about again before they are taken: outside what is usual. */
export const DoubtSentence = ({
  name,
  point,
}: {
  readonly name: string;
  readonly point: PointDefinition;
}) => {
  const { document, apply } = useDesk();
  const id = `${name}/usual`;
  const { plausible: usual, unit = "" } = point.quantity ?? {};
  const range = usual && `${usual.min ?? "…"} ${e("s.to")} ${usual.max ?? "…"}`;
  const opened = useOpened({
    [id]: () => (
      <TextEdit
        label={e("l.range")}
        value={usual ? `${usual.min ?? ""} ${e("s.to")} ${usual.max ?? ""}`.trim() : ""}
        onTake={(text) => {
          const read = readRange(text);
          if (!read) return e("l.range-wrong");
          apply(
            changePoint(document, name, (one) => {
              if (!one.quantity) return one;
              const { plausible: _, ...quantity } = one.quantity;
              const none = read.min === undefined && read.max === undefined;
              return { ...one, quantity: none ? quantity : { ...quantity, plausible: read } };
            }),
          );
          return undefined;
        }}
      />
    ),
  });
  return (
    <Sentence verb={e("verb.doubts")} opened={opened}>
      {range ? `${e("s.anything-outside")} ` : ""}
      <OpenBlank id={id}>{range ? `${range} ${printUnit(unit)}` : e("s.no-range")}</OpenBlank>
      {range ? e("s.sure") : ""}
    </Sentence>
  );
};
