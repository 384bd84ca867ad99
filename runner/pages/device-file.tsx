import { type ChangeEvent, useRef, useState } from "react";
import { LeafWords, WordButton, WordList } from "../form/index.ts";
import { keep } from "../messages/keep.ts";
import { type Restored, readUnsent } from "../offline/unsent-file.ts";
import { useDevice } from "./device.tsx";
import { saveUnsent } from "./save-unsent.ts";

const Told = ({ restored }: { readonly restored: Restored }) => {
  const { entries, drafts, photos, known, faults } = restored;
  const some = entries + drafts + photos > 0;
  return (
    <div role="status">
      {some && <p>{keep("keep.took", { entries, drafts, photos, known })}</p>}
      {!some && faults.length === 0 && <p>{keep("keep.nothing")}</p>}
      {faults.map(({ pointer, code }) => (
        <p key={`${pointer}${code}`} className="danger">
          {keep(`fault.${code}`, { pointer })}
        </p>
      ))}
    </div>
  );
};

/** Unsent work as a file, out of this device and into it. */
export const UnsentFile = () => {
  const { database, now, connection } = useDevice();
  const input = useRef<HTMLInputElement>(null);
  const [restored, setRestored] = useState<Restored>();
  const read = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const file = target.files?.[0];
    target.value = "";
    if (file === undefined) return;
    setRestored(await readUnsent(database, file));
    await connection.refresh();
  };
  return (
    <LeafWords>
      <WordList>
        <WordButton onClick={() => void saveUnsent(database, now())}>
          {keep("keep.save")}
        </WordButton>
        <WordButton onClick={() => input.current?.click()}>{keep("keep.read")}</WordButton>
      </WordList>
      <input
        ref={input}
        className="unseen"
        type="file"
        accept="application/json,.json"
        tabIndex={-1}
        aria-label={keep("keep.read")}
        onChange={(event) => void read(event)}
      />
      {restored && <Told restored={restored} />}
      <p className="second">{keep("keep.about")}</p>
    </LeafWords>
  );
};
