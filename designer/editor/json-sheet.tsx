import { AreaField, Button, Buttons, Sheet } from "@roundbook/runner/form";
import { useState } from "react";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { readDocument } from "../model/read-document.ts";

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
  const [error, setError] = useState<string>();
  const take = () => {
    const read = readDocument(text);
    if (read.ok) {
      onTake(read.document);
      onClose();
    } else setError(read.why === null ? e("json.shape") : e("json.bad", { why: read.why }));
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
