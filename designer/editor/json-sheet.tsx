import { useMessages } from "@roundbook/runner/form";
import type { Problem } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { type ReadDocument, readDocument } from "../model/read-document.ts";
import { TextSheet } from "./text-sheet.tsx";

/** The document as text: read it, or paste another in its place. */
export const JsonSheet = ({
  document,
  onTake,
  onClose,
}: {
  readonly document: DraftDocument;
  readonly onTake: (document: DraftDocument) => void;
  readonly onClose: () => void;
}) => (
  <TextSheet
    title={e("json.title")}
    about={e("json.about")}
    label={e("json.label")}
    take={e("json.take")}
    value={document}
    onClose={onClose}
    onTake={(text) => {
      const read = readDocument(text);
      if (!read.ok) return <NotRead read={read} />;
      onTake(read.document);
      onClose();
      return undefined;
    }}
  />
);

/** Why a text was not read: where it stops being JSON, or where it is no checklist. */
export const NotRead = ({ read }: { readonly read: Exclude<ReadDocument, { ok: true }> }) => {
  if ("why" in read) {
    const { line, column, why } = read;
    return e("json.bad", { why: e("json.at", { line, column, why }) });
  }
  return (
    <>
      {e("json.not-a-checklist")}
      <NotAChecklist problems={read.problems} />
    </>
  );
};

/** Each place of a document that is not as a checklist has it, by its pointer. */
export const NotAChecklist = ({ problems }: { readonly problems: readonly Problem[] }) => {
  const { say } = useMessages();
  return problems.map((problem) => (
    <span key={problem.pointer + problem.code} className="json-problem">
      <span className="mono">{problem.pointer || "/"}</span> {say(problem)}
    </span>
  ));
};
