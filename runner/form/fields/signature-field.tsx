import { lazy, Suspense, useState } from "react";
import { LineField } from "../look/line-field.tsx";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { isSignature } from "../model/answer-parts.ts";
import type { FieldProps } from "./field.ts";
import { OtherAnswer } from "./other-answer.tsx";
import { Photos } from "./photos.tsx";

/** Few sign with a finger: the drawing comes only when it is asked for. */
const SignatureDrawing = lazy(async () => ({
  default: (await import("./signature-drawing.tsx")).SignatureDrawing,
}));

/** A declaration by name. The drawing beside it is evidence, and no answer by itself. */
export function SignatureField(props: FieldProps) {
  const { point, answer, onAnswer, photos, signer } = props;
  const { t } = useMessages();
  const [drawing, setDrawing] = useState(false);
  const given = isSignature(answer) ? answer : undefined;
  const name = typeof given?.signedBy === "string" ? given.signedBy : "";
  const kept = given?.drawing;
  const sign = (signedBy: string, sha256 = kept) =>
    onAnswer(
      signedBy === "" ? undefined : { signedBy, ...(sha256 !== undefined && { drawing: sha256 }) },
    );
  return (
    <>
      <LineField
        label={t("signature.name")}
        aria-label={`${point.title}: ${t("signature.name")}`}
        autoComplete="off"
        maxLength={200}
        value={name}
        onChange={({ target }) => sign(target.value)}
      />
      <WordList>
        {name === "" && signer !== undefined && (
          <WordButton onClick={() => sign(signer)}>
            {t("signature.as", { name: signer })}
          </WordButton>
        )}
        {name !== "" && !drawing && kept === undefined && (
          <WordButton onClick={() => setDrawing(true)}>{t("signature.draw")}</WordButton>
        )}
        <OtherAnswer {...props} />
      </WordList>
      {kept !== undefined && (
        <Photos
          title={point.title}
          hashes={[kept]}
          most={1}
          door={photos}
          onRemove={() => onAnswer({ signedBy: name })}
          drawing
        />
      )}
      {drawing && name !== "" && kept === undefined && (
        <Suspense fallback={<p className="second">{t("signature.opening")}</p>}>
          <SignatureDrawing
            keep={photos.keepPhoto}
            onKept={(sha256) => {
              sign(name, sha256);
              setDrawing(false);
            }}
            onClose={() => setDrawing(false)}
          />
        </Suspense>
      )}
    </>
  );
}
