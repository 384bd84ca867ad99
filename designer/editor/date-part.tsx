import type { DateBound } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import {
  DATE_SIDES,
  type DateFields,
  dateBound,
  dateFields,
  dateOrigins,
  readDay,
  readDistance,
  setDate,
  sideOf,
} from "../model/date-bound.ts";
import { dateBoundWords, distanceWords, originWords } from "../model/date-words.ts";
import { ChoiceEdit, OpenBlank, TextEdit } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import type { LimitPart, LimitPartOf } from "./limit-parts.tsx";

const TODAY: DateBound = { from: "today" };

/** Before or after which day a date fails: a day written out, or counted from another. */
export const datePart = (of: LimitPartOf): LimitPart => {
  const { document, name, limit, id, change } = of;
  const side = sideOf(limit) ?? "notBefore";
  const bound = limit[side] ?? TODAY;
  const fields = dateFields(bound);
  const set = (members: Partial<DateFields>) =>
    fields && change((one) => setDate(one, side, dateBound({ ...fields, ...members })));
  return {
    editors: {
      [id("date-side")]: () => (
        <ChoiceEdit
          label={e("l.date-side")}
          choices={DATE_SIDES.map((value) => ({ value, label: f(`note.${value}`) }))}
          chosen={side}
          onChoose={(to) => change((one) => setDate(one, to, bound))}
        />
      ),
      [id(side)]: () => (
        <OriginEdit
          origins={dateOrigins(document, name)}
          chosen={fields?.from ?? null}
          onDistance={id("date-distance")}
          onDay={id("date-day")}
          onChoose={(from) => set({ from, day: "", count: 0 })}
        />
      ),
      [id("date-day")]: () => (
        <TextEdit
          label={e("l.date-day")}
          value={fields?.day ?? ""}
          onTake={(text) => {
            const day = readDay(text);
            if (day === undefined) return e("l.date-wrong");
            change((one) => setDate(one, side, day));
            return undefined;
          }}
        />
      ),
      [id("date-distance")]: () => (
        <TextEdit
          label={e("l.date-distance")}
          value={fields ? distanceWords(fields) : ""}
          onTake={(text) => {
            const distance = readDistance(text);
            if (!distance) return e("l.date-distance-wrong");
            set(distance);
            return undefined;
          }}
        />
      ),
    },
    words: (
      <>
        <OpenBlank id={id("date-side")}>{f(`note.${side}`)}</OpenBlank>{" "}
        {fields === null || fields.from === "day" ? (
          <OpenBlank id={id(side)}>{dateBoundWords(document, bound)}</OpenBlank>
        ) : (
          <>
            <OpenBlank id={id("date-distance")}>
              {distanceWords(fields) || e("s.date-itself")}
            </OpenBlank>{" "}
            <OpenBlank id={id(side)}>{originWords(document, fields.from)}</OpenBlank>
          </>
        )}
      </>
    ),
  };
};

/** What the day is counted from; a day written out is asked for in the next blank. */
const OriginEdit = ({
  origins,
  chosen,
  onDay,
  onDistance,
  onChoose,
}: {
  readonly origins: readonly string[];
  readonly chosen: string | null;
  /** Ids of the blanks that open next. */
  readonly onDay: string;
  readonly onDistance: string;
  readonly onChoose: (from: string) => void;
}) => {
  const { document, setOpen } = useDesk();
  return (
    <ChoiceEdit
      label={e("l.date-from")}
      choices={[
        ...origins.map((value) => ({ value, label: originWords(document, value) })),
        { value: "day", label: e("s.date-written") },
      ]}
      chosen={chosen}
      onChoose={(to) => {
        if (to !== "day") onChoose(to);
        queueMicrotask(() => setOpen(to === "day" ? onDay : onDistance));
      }}
    />
  );
};
