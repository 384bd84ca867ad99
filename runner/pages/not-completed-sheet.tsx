import type { BodyOf } from "@roundbook/schemas";
import { useState } from "react";
import { AreaField, Button, Buttons, ChoiceList, LeafWords, Sheet } from "../form/index.ts";
import { work } from "../messages/work.ts";
import { Commitments } from "../offline/make-entry.ts";
import type { ToFill } from "./use-fill.ts";
import { useWrite } from "./use-write.ts";

type Reason = BodyOf<"not-completed">["reason"];
const REASONS = ["no-access", "not-found", "in-use", "unsafe-to-test", "closed"] as const;

/** Writes an attempt that could not be completed: the asset stays due. */
export const NotCompletedSheet = ({
  given,
  onClose,
  onWritten,
}: {
  readonly given: ToFill;
  readonly onClose: () => void;
  readonly onWritten: (entry: string) => void;
}) => {
  const { asset, bundle, issue } = given;
  const write = useWrite();
  const [reason, setReason] = useState<Reason | null>(null);
  const [note, setNote] = useState("");
  const [writing, setWriting] = useState(false);
  const submit = async () => {
    if (reason === null) return;
    setWriting(true);
    const commitments = new Commitments();
    const body: BodyOf<"not-completed"> = {
      checklist: { id: issue.id, issue: issue.issue, hash: issue.hash },
      reason,
      ...(note.trim() === "" ? {} : { note: await commitments.of(note.trim()) }),
    };
    const entry = await write({
      made: { kind: "not-completed", body },
      asset: asset.id,
      contents: commitments.contents,
      zone: bundle.site.zone,
      summary: {
        number: asset.number,
        description: asset.description,
        words: `${work("not.title")}: ${work(`not.${reason}`).toLowerCase()}`,
        overall: null,
      },
    });
    onWritten(entry);
  };
  return (
    <Sheet
      number={asset.number}
      title={work("not.title")}
      second={asset.description}
      close={work("not.close")}
      onClose={onClose}
    >
      <ChoiceList
        label={work("not.why")}
        choices={REASONS.map((value) => ({ value, label: work(`not.${value}`) }))}
        chosen={reason}
        onChoose={setReason}
      />
      <LeafWords>
        <AreaField
          label={work("not.note")}
          value={note}
          maxLength={4000}
          onChange={(event) => setNote(event.target.value)}
        />
        <p className="second">{work("not.stays")}</p>
      </LeafWords>
      <Buttons>
        <Button kind="primary" disabled={reason === null || writing} onClick={() => void submit()}>
          {work("not.write")}
        </Button>
      </Buttons>
    </Sheet>
  );
};
