import {
  DueMark,
  dayAndMonth,
  FacingHead,
  FacingSheet,
  longDay,
  Row,
  Rows,
} from "@roundbook/runner/form";
import { type IntervalRule, parseCivilDate } from "@roundbook/schemas";
import { d } from "../messages/desk.ts";
import { nextWindows } from "../model/interval-fields.ts";

const today = () => {
  const now = new Date();
  const iso = `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, "0")}-${String(now.getDate()).padStart(2, "0")}`;
  return parseCivilDate(iso);
};

/** The next ten dates of an asset that is done today and then on every due day. */
export const NextDates = ({ rule }: { readonly rule: IntervalRule | null }) => {
  const from = today();
  if (!rule || from === undefined) return <FacingHead title={d("intervals.dates")} />;
  return (
    <>
      <FacingHead title={d("intervals.dates")} aside={d("intervals.dates-from")} />
      <FacingSheet>
        <Rows>
          {nextWindows(rule, from, 10).map((window, at) => (
            <Row
              key={window.due}
              number={String(at + 1)}
              name={longDay(window.due, from)}
              second={
                window.earliest === window.latest
                  ? undefined
                  : d("intervals.window", {
                      earliest: dayAndMonth(window.earliest, from),
                      latest: dayAndMonth(window.latest, from),
                    })
              }
              due={<DueMark {...window} today={window.due} />}
            />
          ))}
        </Rows>
      </FacingSheet>
    </>
  );
};
