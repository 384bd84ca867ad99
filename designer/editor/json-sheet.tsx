import { AreaField, Button, Buttons, Sheet, useMessages } from "@roundbook/runner/form";
import type { Problem } from "@roundbook/schemas";
import { type ReactNode, useState } from "react";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { type ReadDocument, readDocument } from "../model/read-document.ts";

/** The document as text: read it, or paste another in its place. */
export const JsonSheet = ({
  document,
  onTake,
  onClose,
}: {
  readonly document: DraftDocument;
  readonly onTake: (document: DraftDocument) => void;
  readonly onClose: () => void;
}) => {
  const [text, setText] = useState(() => JSON.stringify(document, null, 2));
  const [error, setError] = useState<ReactNode>();
  const take = () => {
    const read = readDocument(text);
    if (read.ok) {
      onTake(read.document);
      onClose();
    } else setError(<NotRead read={read} />);
  };
  return (
    <Sheet
      title={e("json.title")}
      second={e("json.about")}
      close={d("issued.close")}
      onClose={onClose}
    >
      <div className="mono-edit json-edit">
        <AreaField
          label={e("json.label")}
          rows={18}
          spellCheck={false}
          error={error}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </div>
      <Buttons>
        <Button kind="primary" onClick={take}>
          {e("json.take")}
        </Button>
      </Buttons>
    </Sheet>
  );
};

const NotRead = ({ read }: { readonly read: Exclude<ReadDocument, { ok: true }> }) => {
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
