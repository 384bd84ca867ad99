import type { HistoryEntry, Judgement, Reading } from "@roundbook/schemas";
import {
  printNumber,
  printQuantity,
  reservationsOf,
  tallyOf,
  Verdict,
  verdictWords,
} from "../form/index.ts";
import { book } from "../messages/book.ts";

/** How many points were asked and came out how: "3 pass, 1 fail". */
export const tally = (judgement: Judgement): { count: number; tally: string } => {
  const { asked, verdicts } = tallyOf(judgement);
  const parts = verdicts.map(({ verdict, count }) => verdictWords(`tally.${verdict}`, { count }));
  return { count: asked, tally: parts.join(", ") };
};

/** "not complete, result awaited": what a verdict is never printed without, where it holds. */
export const reservationWords = (judgement: Judgement): string =>
  reservationsOf(judgement)
    .map((one) => verdictWords(`reservation.${one}`))
    .join(", ");

/** The judgement that stands: the server's own, with the results of samples that came since. */
export const judgementOf = ({ entry, leaf, received }: HistoryEntry): Judgement | null =>
  received?.judgement ??
  leaf.judgement ??
  (entry.kind === "inspection" ? (entry.body.judgement as unknown as Judgement) : null);

/** "Undecided when signed; fail since entry 32": where results of samples changed the verdict. */
export const sinceSigned = ({ leaf, received }: HistoryEntry): string | undefined => {
  const word = (judgement: Judgement | null | undefined) =>
    verdictWords(judgement?.overall ? `verdict.${judgement.overall}` : "verdict.none");
  const signed = word(leaf.judgement);
  const now = word(received?.judgement);
  return received === undefined || now === signed
    ? undefined
    : book("entry.since-signed", {
        signed,
        now: now.toLowerCase(),
        seq: printNumber(received.since),
      });
};

export const OverallMark = ({ judgement }: { readonly judgement: Judgement }) => {
  const { overall } = judgement;
  const reserved = reservationWords(judgement);
  return (
    <>
      {overall === null ? (
        <span className="second">{verdictWords("verdict.none")}</span>
      ) : (
        <Verdict verdict={overall} word={verdictWords(`verdict.${overall}`)} />
      )}
      {reserved && <span className="row-second">{reserved}</span>}
    </>
  );
};

/** "Sample B-17: 4 µg/L, pass": what a result is of, and how its point is judged with it. */
export const resultWords = (
  { leaf, sample }: HistoryEntry,
  point: string,
  { value, unit, comparator }: Reading,
): string => {
  const verdict = leaf.judgement?.points[point]?.verdict;
  const found = [
    printQuantity(value, unit, { comparator }),
    verdict && verdictWords(`verdict.${verdict}`).toLowerCase(),
  ]
    .filter(Boolean)
    .join(", ");
  return sample === undefined ? found : book("entry.of-sample", { sample, found });
};
