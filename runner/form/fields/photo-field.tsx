import { WordButton } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { wordsIn } from "../model/answer-parts.ts";
import type { FieldProps } from "./field.ts";
import { Photos } from "./photos.tsx";

/** As many as an answer holds. */
const MOST = 12;

export function PhotoField({ point, answer, onAnswer, onAbsent, photos }: FieldProps) {
  const { t } = useMessages();
  const hashes = wordsIn(answer);
  return (
    <>
      <Photos
        title={point.title}
        hashes={hashes}
        most={MOST}
        door={photos}
        onAdd={(sha256) => onAnswer([...hashes.filter((one) => one !== sha256), sha256])}
        onRemove={(sha256) => {
          const left = hashes.filter((one) => one !== sha256);
          onAnswer(left.length > 0 ? left : undefined);
        }}
      />
      <WordButton onClick={onAbsent}>{t("answer.other")}</WordButton>
    </>
  );
}
