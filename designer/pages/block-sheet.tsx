import { LeafWords, useMessages, WordButton, WordList } from "@roundbook/runner/form";
import type { BlockRow } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { type ReactNode, useState } from "react";
import { NotAChecklist, NotRead } from "../editor/json-sheet.tsx";
import { TextSheet } from "../editor/text-sheet.tsx";
import { b } from "../messages/blocks.ts";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { refusalWords } from "../messages/en-refusals.ts";
import { readJsonText } from "../model/read-document.ts";
import { Refusal, sendJson, Unreachable } from "./client.ts";
import { useRefused } from "./use-refused.tsx";

/** A block as text, kept over the revision that is shown. */
export const BlockSheet = ({ row, onClose }: { row: BlockRow; onClose: () => void }) => {
  const queries = useQueryClient();
  const { say } = useMessages();
  const { refused, guard } = useRefused();
  const [shown, setShown] = useState(row);
  const [over, setOver] = useState(row.revision);
  const [theirs, setTheirs] = useState<BlockRow | null>(null);
  const renew = async () => {
    await queries.invalidateQueries({ queryKey: ["blocks"] });
    await queries.invalidateQueries({ queryKey: ["drafts"] });
  };
  const why = (error: unknown): ReactNode => {
    if (error instanceof Unreachable) return d("app.away");
    if (!(error instanceof Refusal)) throw error;
    if (error.code === "block-changed-meanwhile") {
      const { current } = error.reply as unknown as { current: BlockRow };
      setTheirs(current);
      return b("sheet.changed", { revision: current.revision });
    }
    return (
      <>
        {refusalWords(error.code) ?? say({ code: error.code, params: {} })}
        <NotAChecklist problems={error.problems} />
      </>
    );
  };
  return (
    <TextSheet
      key={shown.revision}
      title={shown.block.title}
      about={b("sheet.about", { revision: shown.revision })}
      label={b("sheet.label")}
      take={b("sheet.keep")}
      value={shown.block}
      onClose={onClose}
      onTake={async (text) => {
        const read = readJsonText(text);
        if (!read.ok) return <NotRead read={read} />;
        try {
          await sendJson("PUT", `/api/blocks/${row.name}`, {
            revision: over,
            block: read.value,
          });
        } catch (error) {
          return why(error);
        }
        await renew();
        onClose();
        return undefined;
      }}
      actions={
        <LeafWords>
          {refused}
          {theirs && (
            <WordList>
              <WordButton
                onClick={() => {
                  setShown(theirs);
                  setOver(theirs.revision);
                  setTheirs(null);
                }}
              >
                {e("ed.take-theirs")}
              </WordButton>
              {/* It is kept by the button above, now over what the other wrote. */}
              <WordButton
                onClick={() => {
                  setOver(theirs.revision);
                  setTheirs(null);
                }}
              >
                {e("ed.keep-newest")}
              </WordButton>
            </WordList>
          )}
          {!row.usedBy.some(({ issue }) => issue === null) && (
            <WordButton
              quiet
              onClick={() =>
                void guard(async () => {
                  await sendJson("DELETE", `/api/blocks/${row.name}`);
                  await renew();
                  onClose();
                })
              }
            >
              {b("sheet.remove")}
            </WordButton>
          )}
        </LeafWords>
      }
    />
  );
};
