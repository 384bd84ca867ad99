import type { Entry } from "@roundbook/schemas";
import { book } from "../messages/book.ts";
import { printDay } from "./day-words.ts";

type Planning = Extract<
  Entry,
  {
    kind:
      | "calendar-set"
      | "holidays-set"
      | "interval-overridden"
      | "override-ended"
      | "particulars-changed"
      | "team-set"
      | "keeper-set"
      | "time-set";
  }
>;

const joined = (parts: readonly (string | false | undefined)[]): string =>
  parts.filter(Boolean).join(". ");

/** What an entry about when and by whom checks are done says. `titles` are of intervals and places, by id. */
export const planningWords = (
  { kind, body }: Planning,
  titles: ReadonlyMap<string, string>,
): string => {
  switch (kind) {
    case "calendar-set": {
      const { weekdays = [], closures = [], seasons = [] } = body.calendar;
      const counts = { days: weekdays.length, closures: closures.length + seasons.length };
      return joined([titles.get(body.site), book("entry.calendar-words", counts), body.reason]);
    }
    case "holidays-set": {
      const { region, year, holidays } = body;
      return book("entry.holidays-words", { region, year: String(year), count: holidays.length });
    }
    case "interval-overridden": {
      const { interval, reason, until } = body;
      const time =
        until === undefined
          ? book("entry.until-ended")
          : book("entry.until", { day: printDay(until) });
      return joined([titles.get(interval), time, reason]);
    }
    case "override-ended":
      return joined([titles.get(body.interval), body.reason]);
    case "particulars-changed": {
      const { particulars, reason, modified } = body;
      const changed = Object.entries(particulars).map(
        ([name, value]) =>
          `${name} ${typeof value === "boolean" ? book(value ? "particular.yes" : "particular.no") : value}`,
      );
      return joined([changed.join(", "), modified && book("entry.modified"), reason]);
    }
    case "team-set":
      return book("entry.team-words", { name: body.name, count: body.members.length });
    case "keeper-set": {
      const said = book(body.keeper === null ? "entry.keeper-none" : "entry.keeper-named");
      const place = titles.get(body.place);
      return place === undefined ? said : `${place}: ${said}`;
    }
    case "time-set":
      return book("entry.time-words", { minutes: body.minutes });
  }
};
