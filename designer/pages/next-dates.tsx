import {
  Blank,
  classes,
  FacingHead,
  FacingSheet,
  longDay,
  Row,
  Rows,
  shortDay,
  useMessages,
  whyWords,
} from "@roundbook/runner/form";
import {
  type CivilDate,
  type DatePreview,
  type IntervalDates,
  parseCivilDate,
} from "@roundbook/schemas";
import { useState } from "react";
import { AssetChoice, type Chosen } from "../interval/asset-choice.tsx";
import { DateMark } from "../interval/date-mark.tsx";
import type { Preview } from "../interval/use-preview.ts";
import { iv } from "../messages/intervals.ts";

/** "Tue 25 May 2027"; the year where it is another than that of the date before. */
const dayWords = (day: CivilDate, before: CivilDate | undefined): string =>
  `${longDay(day, day).slice(0, 3)} ${shortDay(day, before ?? (0 as CivilDate))}`;

/** The next ten dates of a real asset, by the interval as it is written. */
export const NextDates = ({
  assetType,
  preview,
  older,
  onAsset,
}: {
  readonly assetType: string;
  readonly preview: Preview<IntervalDates>;
  /** What is shown is of an earlier text. */
  readonly older: boolean;
  readonly onAsset: (asset: string) => void;
}) => {
  const [opened, setOpened] = useState(false);
  const { reply, waiting, failed } = preview;
  const none = failed ? "preview.failed" : waiting ? "dates.wait" : "dates.none";
  const choose = ({ id }: Chosen) => {
    setOpened(false);
    onAsset(id);
  };
  return (
    <section aria-busy={waiting} className={classes("dates", older && "preview-older")}>
      <FacingHead
        title={iv("dates.title")}
        aside={
          reply?.asset && (
            <>
              {`${iv("dates.for")} `}
              <Blank expanded={opened} onPress={() => setOpened(!opened)}>
                {`${reply.asset.number} ${reply.asset.description}`}
              </Blank>
            </>
          )
        }
      />
      {opened && <AssetChoice assetType={assetType} onChoose={choose} />}
      {!reply && <p className="second">{iv(none)}</p>}
      {reply && <Dates reply={reply} />}
      {reply && failed && <p className="second dates-note">{iv("preview.failed")}</p>}
      {older && <p className="second dates-note">{iv("dates.older")}</p>}
    </section>
  );
};

const Dates = ({ reply }: { readonly reply: IntervalDates }) => {
  const messages = useMessages();
  const { dates, ends, asset } = reply;
  if (asset === null) return <p className="second">{iv("dates.no-asset")}</p>;
  const days = dates.map(({ due }) => parseCivilDate(due));
  return (
    <>
      {dates.length > 0 && (
        <FacingSheet>
          <Rows>
            {dates.map((date, at) => (
              // The same day may stand twice, so the place in the list tells them apart.
              <DateRow
                key={at}
                date={date}
                number={at + 1}
                before={days[at - 1]}
                like={dates[at - 1]}
              />
            ))}
          </Rows>
        </FacingSheet>
      )}
      {ends && <p className="second dates-note">{whyWords(messages, ends)}</p>}
      {dates.some(({ plain }) => plain !== undefined) && (
        <p className="second dates-note">{iv("dates.dotted")}</p>
      )}
    </>
  );
};

const DateRow = ({
  date,
  number,
  before,
  like,
}: {
  readonly date: DatePreview;
  readonly number: number;
  readonly before: CivilDate | undefined;
  /** The date before it: a reason that is the same again is said once. */
  readonly like: DatePreview | undefined;
}) => {
  const messages = useMessages();
  const { why } = date;
  const said = like?.why.code === why.code ? (why.moved ?? []) : [why];
  const [earliest, due, latest, plain] = [date.earliest, date.due, date.latest, date.plain].map(
    (iso) => (iso === undefined ? undefined : parseCivilDate(iso)),
  );
  if (earliest === undefined || due === undefined || latest === undefined) return null;
  return (
    <Row
      number={String(number)}
      name={dayWords(due, before)}
      second={said.map((one) => whyWords(messages, one, due)).join(" ") || undefined}
      due={<DateMark {...{ earliest, latest, plain }} />}
    />
  );
};
