import { AreaField, Button, Buttons, Sheet } from "@roundbook/runner/form";
import { type ReactNode, useState } from "react";
import { d } from "../messages/desk.ts";

/** A document as text: read it, or write another in its place. */
export const TextSheet = ({
  title,
  about,
  label,
  take,
  value,
  actions,
  onTake,
  onClose,
}: {
  readonly title: string;
  readonly about: string;
  readonly label: string;
  /** What the button that takes the text says. */
  readonly take: string;
  readonly value: object;
  readonly actions?: ReactNode;
  /** Takes the text, or gives what is wrong with it. */
  readonly onTake: (text: string) => ReactNode | Promise<ReactNode>;
  readonly onClose: () => void;
}) => {
  const [text, setText] = useState(() => JSON.stringify(value, null, 2));
  const [error, setError] = useState<ReactNode>();
  return (
    <Sheet title={title} second={about} close={d("issued.close")} onClose={onClose}>
      <div className="mono-edit json-edit">
        <AreaField
          label={label}
          rows={18}
          spellCheck={false}
          error={error}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </div>
      <Buttons>
        <Button kind="primary" onClick={async () => setError(await onTake(text))}>
          {take}
        </Button>
      </Buttons>
      {actions}
    </Sheet>
  );
};
