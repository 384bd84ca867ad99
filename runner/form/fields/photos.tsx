import { type ChangeEvent, type ReactNode, useEffect, useRef, useState } from "react";
import { Button, Buttons } from "../look/button.tsx";
import { WordButton } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import type { PhotoDoor } from "./field.ts";

export interface PhotosProps {
  readonly title: string;
  readonly hashes: readonly string[];
  readonly most: number;
  readonly door: PhotoDoor;
  /** Without it photos are only shown. */
  onAdd?(sha256: string): void;
  onRemove?(sha256: string): void;
  /** A button beside "Take photo". */
  readonly beside?: ReactNode;
  /** The one picture is a drawn signature. */
  readonly drawing?: boolean;
}

/** Photos already kept, and a way to take another: the camera on a phone, a file elsewhere. */
export function Photos(props: PhotosProps) {
  const { title, hashes, most, door, onAdd, onRemove, beside, drawing } = props;
  const { t } = useMessages();
  const input = useRef<HTMLInputElement>(null);
  const [failed, setFailed] = useState(false);

  const onChange = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const file = target.files?.[0];
    // The same photo may be chosen again after it was removed.
    target.value = "";
    if (file === undefined) return;
    try {
      const { sha256 } = await door.keepPhoto(file);
      setFailed(false);
      onAdd?.(sha256);
    } catch {
      setFailed(true);
    }
  };

  return (
    <>
      {hashes.length > 0 && (
        <ul className={drawing ? "signed" : "photos"}>
          {hashes.map((sha256, index) => (
            <li key={sha256}>
              <Photo
                sha256={sha256}
                door={door}
                words={
                  drawing ? t("signature.shown") : t("photo.shown", { number: index + 1, title })
                }
                elsewhere={t("photo.kept-elsewhere", { number: index + 1 })}
              />
              {onRemove && (
                <WordButton
                  onClick={() => onRemove(sha256)}
                  aria-label={drawing ? undefined : t("photo.remove", { number: index + 1 })}
                >
                  {t(drawing ? "signature.remove" : "answer.clear")}
                </WordButton>
              )}
            </li>
          ))}
        </ul>
      )}
      {onAdd && (
        <>
          <input
            ref={input}
            className="unseen"
            type="file"
            accept="image/*"
            capture="environment"
            tabIndex={-1}
            aria-label={t("photo.take")}
            onChange={onChange}
          />
          <Buttons even>
            <Button
              kind="primary"
              disabled={hashes.length >= most}
              onClick={() => input.current?.click()}
            >
              {t(hashes.length > 0 ? "photo.another" : "photo.take")}
            </Button>
            {beside}
          </Buttons>
        </>
      )}
      {failed && (
        <p className="danger" role="alert">
          {t("photo.failed")}
        </p>
      )}
    </>
  );
}

function Photo({
  sha256,
  door,
  words,
  elsewhere,
}: {
  readonly sha256: string;
  readonly door: PhotoDoor;
  readonly words: string;
  /** Said where the picture is not on this device. */
  readonly elsewhere: string;
}) {
  const [url, setUrl] = useState<string>();
  useEffect(() => {
    let current = true;
    door.photoUrl(sha256).then(
      (found) => current && setUrl(found),
      () => current && setUrl(undefined),
    );
    return () => {
      current = false;
    };
  }, [sha256, door]);
  if (url === undefined) return <p className="second">{elsewhere}</p>;
  return <img src={url} alt={words} />;
}
