import { useMessages } from "../messages/messages.tsx";
import { readingsOf } from "../model/answer-parts.ts";
import { readingWords, valueWords } from "../model/answer-words.ts";
import { countingAt } from "../model/combined.ts";
import type { FieldProps } from "./field.ts";
import { LimitPicture } from "./limit-picture.tsx";
import { boxAt, quantityOf, readingOf } from "./reading-entry.ts";
import { TimedInput } from "./reading-field.tsx";

/** Several readings of one quantity: those taken, the one being written, and which of them counts. */
export function ReadingsField(props: FieldProps) {
  const { point, answer, draft, judgement, limits, last, expected } = props;
  const { t } = useMessages();
  const combine = point.definition.several?.combine ?? "each";
  const readings = readingsOf(answer);
  const value = judgement?.value;
  const written = Math.max(draft.boxes.length, draft.at + 1);
  const count = Math.max(expected ?? 0, written);
  const drawn = value === undefined ? undefined : { value, unit: quantityOf(point).unit };
  return (
    <>
      <p className="second">
        {expected === undefined
          ? t("readings.about-open")
          : t("readings.about", { count: expected })}{" "}
        {t(`readings.${combine}`)}
      </p>
      <Taken {...props} count={count} value={value} />
      <TimedInput
        {...props}
        key={draft.at}
        label={t("readings.one", { title: point.title, number: draft.at + 1 })}
      />
      {combine === "mean" && value !== undefined && (
        <p className="equation">{t("readings.mean-is", { value: valueWords(point, value) })}</p>
      )}
      <LimitPicture
        quantity={point.definition.quantity}
        judgement={judgement}
        limits={limits}
        reading={drawn ?? (combine === "each" ? readings.at(-1) : undefined)}
        last={last}
        printed={combine === "mean"}
      />
    </>
  );
}

/** A line for each reading: pressing it writes that one again. */
function Taken(props: FieldProps & { readonly count: number; readonly value: number | undefined }) {
  const { point, draft, onDraft, wait, onWait, count, value } = props;
  const { t } = useMessages();
  const counting = countingAt(point, draft.boxes.map(readingOf), value);
  const goTo = (at: number) => {
    onDraft({ ...draft, at });
    // The clock runs on for the next reading.
    if (wait?.readAt !== undefined) onWait({ startedAt: wait.startedAt });
  };
  return (
    <ol className="taken">
      {Array.from({ length: count }, (_, at) => {
        const reading = readingOf(boxAt(point, draft, at));
        return (
          <li key={at}>
            <button
              type="button"
              className="taken-row"
              aria-current={at === draft.at || undefined}
              onClick={() => goTo(at)}
            >
              <span>{at + 1}</span>
              {reading === undefined ? (
                <span className="answer-none">{t("answer.none")}</span>
              ) : (
                <span className="answer">
                  {readingWords(point, reading)}{" "}
                  {at === counting && <span className="taken-counts">{t("readings.counts")}</span>}
                </span>
              )}
            </button>
          </li>
        );
      })}
    </ol>
  );
}
