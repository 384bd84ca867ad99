import { LeafWords, PlaceHeading } from "@roundbook/runner/form";
import type { IntervalEffect } from "@roundbook/schemas";
import { iv } from "../messages/intervals.ts";
import type { Preview } from "./use-preview.ts";

/** "1 h 20 min". */
const timeWords = (minutes: number): string =>
  [
    minutes >= 60 && iv("effect.hours", { hours: Math.floor(minutes / 60) }),
    minutes % 60 > 0 && iv("effect.minutes", { minutes: minutes % 60 }),
  ]
    .filter(Boolean)
    .join(" ");

const workWords = (minutesAMonth: number | null): string => {
  if (minutesAMonth === null) return "";
  const minutes = Math.round(Math.abs(minutesAMonth));
  if (minutes === 0) return iv("effect.same");
  return iv(minutesAMonth > 0 ? "effect.more" : "effect.less", { time: timeWords(minutes) });
};

const Told = ({ effect }: { readonly effect: IntervalEffect }) => {
  const { assets, overdueNow, overdueThen, examples, sooner, later, undecided } = effect;
  if (assets === 0) return <p>{iv("effect.no-assets")}</p>;
  const already = overdueNow > 0 ? iv("effect.already", { now: overdueNow }) : "";
  return (
    <>
      <p>
        {overdueThen === 0 ? (
          iv("effect.no-overdue", { assets })
        ) : (
          <>
            <strong>{iv("effect.overdue", { count: overdueThen, assets })}</strong>
            {already}
            {examples.length > 0 && iv("effect.examples", { examples: examples.join(", ") })}
            {examples.length < overdueThen ? ", …" : "."}
          </>
        )}
      </p>
      {undecided > 0 && (
        <p>
          <strong>{iv("effect.undecided", { count: undecided })}</strong>
        </p>
      )}
      <p className="second">
        {[
          iv("effect.sooner", { sooner, later }),
          workWords(effect.minutesAMonth),
          iv("effect.entry", { assets }),
        ]
          .filter((one) => one !== "")
          .join(" ")}
      </p>
    </>
  );
};

/** What it would do to the assets there are, before it is in force. */
export const Effect = ({
  preview,
  older,
}: {
  readonly preview: Preview<IntervalEffect>;
  /** What is shown is of an earlier text. */
  readonly older: boolean;
}) => (
  <section aria-busy={preview.waiting} className={older ? "preview-older" : undefined}>
    <PlaceHeading title={iv("effect.title")} />
    <LeafWords>
      {preview.reply ? (
        <Told effect={preview.reply} />
      ) : (
        <p className="second">{iv(preview.failed ? "preview.failed" : "effect.none")}</p>
      )}
      {preview.reply && preview.failed && <p className="second">{iv("preview.failed")}</p>}
      {older && <p className="second">{iv("effect.older")}</p>}
    </LeafWords>
  </section>
);
