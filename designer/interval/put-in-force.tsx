import {
  Button,
  Buttons,
  LeafWords,
  LineField,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import { type FormEvent, type ReactNode, useState } from "react";
import { iv } from "../messages/intervals.ts";

/** The end of the page: put in force with a reason, kept as a draft, or given up. */
export const PutInForce = ({
  standing,
  busy,
  refused,
  isDraft,
  isRunning,
  onForce,
  onKeep,
  onDiscard,
  onEnd,
}: {
  /** How many things stand in the way. */
  readonly standing: number;
  readonly busy: boolean;
  readonly refused: ReactNode;
  readonly isDraft: boolean;
  /** An interval in force by this id. */
  readonly isRunning: boolean;
  readonly onForce: (reason: string) => void;
  readonly onKeep: () => void;
  readonly onDiscard: () => void;
  readonly onEnd: () => void;
}) => {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState("");
  const [error, setError] = useState<string>();
  const [sure, setSure] = useState<"discard" | "end" | null>(null);
  const force = (event: FormEvent) => {
    event.preventDefault();
    const empty = reason.trim() === "";
    setError(empty ? iv("w.needed") : undefined);
    if (empty) return;
    setAsking(false);
    onForce(reason.trim());
  };
  return (
    <LeafWords>
      <div className="force">
        {refused}
        {standing > 0 && <p>{iv("force.stands", { count: standing })}</p>}
        {asking ? (
          <form onSubmit={force} noValidate className="force-reason">
            <LineField
              label={iv("force.reason")}
              help={iv("force.reason-help")}
              error={error}
              value={reason}
              maxLength={200}
              autoFocus
              autoComplete="off"
              onChange={(event) => setReason(event.target.value)}
            />
            <Buttons>
              <Button kind="secondary" onClick={() => setAsking(false)}>
                {iv("force.not")}
              </Button>
              <Button kind="primary" type="submit" disabled={busy || standing > 0}>
                {iv("force.sure")}
              </Button>
            </Buttons>
          </form>
        ) : (
          <Buttons>
            <Button kind="primary" disabled={busy || standing > 0} onClick={() => setAsking(true)}>
              {iv("force.go")}
            </Button>
            <Button kind="secondary" disabled={busy} onClick={onKeep}>
              {iv("force.keep")}
            </Button>
          </Buttons>
        )}
      </div>
      <WordList>
        {isDraft && (
          <WordButton quiet onClick={sure === "discard" ? onDiscard : () => setSure("discard")}>
            {iv(sure === "discard" ? "force.discard-sure" : "force.discard")}
          </WordButton>
        )}
        {isRunning && (
          <WordButton quiet onClick={sure === "end" ? onEnd : () => setSure("end")}>
            {iv(sure === "end" ? "force.end-sure" : "force.end")}
          </WordButton>
        )}
        {sure && (
          <WordButton quiet onClick={() => setSure(null)}>
            {iv("force.end-not")}
          </WordButton>
        )}
      </WordList>
      <p className="second caution">{iv("page.caution")}</p>
    </LeafWords>
  );
};
