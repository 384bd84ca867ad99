import {
  Blank,
  DueMark,
  dayAndMonth,
  FacingHead,
  FacingSheet,
  LineField,
  longDay,
  Row,
  Rows,
  shortDay,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import {
  type CivilDate,
  formatCivilDate,
  type IntervalRule,
  parseCivilDate,
} from "@roundbook/schemas";
import { useState } from "react";
import { d } from "../messages/desk.ts";
import { nextWords } from "../model/fact-words.ts";
import { nextWindows } from "../model/interval-fields.ts";
import type { Band } from "../model/score-edit.ts";

const today = (): CivilDate | undefined => {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, "0");
  return parseCivilDate(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
};

/** "Tue 25 May 2027". */
const dayWords = (day: CivilDate, from: CivilDate): string =>
  `${longDay(day, day).slice(0, 3)} ${shortDay(day, from)}`;

const SHOWN = 10;

/** The next ten dates of an asset that is done on a day, and then on every day it is due. */
export const NextDates = ({
  rule,
  bands,
}: {
  readonly rule: IntervalRule | null;
  /** Of the score, where the result says when the next one is. */
  readonly bands: readonly Band[];
}) => {
  const [start, setStart] = useState(today);
  const [chosen, setChosen] = useState(0);
  const [open, setOpen] = useState<"start" | "band" | null>(null);
  const giving = bands.filter((band) => band.next !== undefined);
  const band = giving[chosen] ?? giving[0];
  const byResult = rule?.kind === "by-result";
  const turn = (blank: "start" | "band") => setOpen(open === blank ? null : blank);
  if (!rule || start === undefined || (byResult && !band)) {
    return (
      <>
        <FacingHead title={d("intervals.dates")} />
        <p className="second">{d("intervals.dates-none")}</p>
      </>
    );
  }
  const next = byResult ? (band?.next ?? "P1Y") : undefined;
  // A result that sends it straight to another check is due the day it was done, and that is all.
  const count = next === "at-once" ? 1 : SHOWN;
  return (
    <>
      <FacingHead title={d("intervals.dates")} />
      <p className="second dates-from">
        {`${d("intervals.done-on")} `}
        <Blank expanded={open === "start"} onPress={() => turn("start")}>
          {dayAndMonth(start)}
        </Blank>
        {byResult && band && (
          <>
            {` ${d("intervals.found")} `}
            <Blank expanded={open === "band"} onPress={() => turn("band")}>
              {band.title}
            </Blank>
          </>
        )}
        {` ${d("intervals.and-after")}`}
      </p>
      {open === "start" && (
        <LineField
          type="date"
          label={d("intervals.start")}
          value={formatCivilDate(start)}
          onChange={(event) => setStart(parseCivilDate(event.target.value) ?? start)}
        />
      )}
      {open === "band" && (
        <WordList>
          {giving.map((one, at) => (
            <WordButton key={one.title} chosen={one === band} onClick={() => setChosen(at)}>
              {`${one.title}: ${nextWords(one.next ?? "")}`}
            </WordButton>
          ))}
        </WordList>
      )}
      <FacingSheet>
        <Rows>
          {nextWindows(rule, start, count, next).map((window, at) => (
            <Row
              // The same day may stand twice, so the place in the list tells them apart.
              key={at}
              number={String(at + 1)}
              name={dayWords(window.due, start)}
              second={
                next === "at-once"
                  ? d("intervals.at-once")
                  : window.earliest === window.latest
                    ? undefined
                    : d("intervals.window", {
                        earliest: shortDay(window.earliest, window.due),
                        latest: shortDay(window.latest, window.due),
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
