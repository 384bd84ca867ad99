import { type ChangeEvent, useRef, useState } from "react";
import { Photos } from "../form/fields/photos.tsx";
import { Button, Buttons } from "../form/index.ts";
import { add } from "../messages/add.ts";
import { usePhotoDoor } from "./use-photo-door.ts";

/** A picture of the asset itself, which it need not have. */
export const AssetPhotoField = ({
  photo,
  onPhoto,
}: {
  /** Its SHA-256. */
  readonly photo: string | null;
  readonly onPhoto: (sha256: string | null) => void;
}) => {
  const door = usePhotoDoor();
  const input = useRef<HTMLInputElement>(null);
  const [failed, setFailed] = useState(false);
  const onChange = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const file = target.files?.[0];
    target.value = "";
    if (file === undefined) return;
    try {
      onPhoto((await door.keepPhoto(file)).sha256);
      setFailed(false);
    } catch {
      setFailed(true);
    }
  };
  return (
    <div className="field">
      {photo ? (
        <Photos
          title={add("add.photo")}
          hashes={[photo]}
          most={1}
          door={door}
          onRemove={() => onPhoto(null)}
        />
      ) : (
        <>
          <input
            ref={input}
            className="unseen"
            type="file"
            accept="image/*"
            capture="environment"
            tabIndex={-1}
            aria-label={add("add.photo")}
            onChange={onChange}
          />
          <Buttons>
            <Button kind="secondary" onClick={() => input.current?.click()}>
              {add("add.photo-take")}
            </Button>
          </Buttons>
        </>
      )}
      {failed && (
        <p className="danger" role="alert">
          {add("add.photo-failed")}
        </p>
      )}
    </div>
  );
};
