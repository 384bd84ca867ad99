import {
  type CivilDate,
  type Explanation,
  formatCivilDate,
  type NewFeed,
} from "@roundbook/schemas";
import { and, asc, lte } from "drizzle-orm";
import ICAL from "ical.js";
import { windows } from "../store/schema/due.ts";
import { say } from "../words/say.ts";
import type { Context } from "./context.ts";
import { readEstate } from "./create-estate.ts";
import { dueLegs } from "./due-scope.ts";
import { dayAsked, selectDue } from "./read-due.ts";
import { readPlaces } from "./read-register.ts";

const DAYS_AHEAD = 366;
const MOST_EVENTS = 5000;

type Stored = Awaited<ReturnType<typeof selectDue>>[number];

/** A day without a clock: the civil date at the site, whatever zone the reader is in. */
const dateOf = (day: number): ICAL.Time =>
  ICAL.Time.fromDateString(formatCivilDate(day as CivilDate));

/** ical.js does not count the space that a continued line begins with (RFC 5545 §3.1: 75 octets). */
ICAL.foldLength = 74;

/**
 * What people wrote about a rule, a closure or a particular may name anybody: it stays in the book.
 * A calendar is told which rule and which moves of a date, each by its figures and dates alone.
 */
const WITH_TYPED_REASON: ReadonlySet<string> = new Set([
  "after-reopened",
  "by-risk",
  "rolled-back",
  "rolled-forward",
  "no-open-day",
  "due-on-reopening",
  "excused-while-closed",
]);
const PRIVATE: ReadonlySet<string> = new Set(["override", "override-over"]);

const bare = ({ code, params }: Explanation): Explanation => {
  const { reason: _, ...rest } = params;
  return { code, params: WITH_TYPED_REASON.has(code) ? rest : params };
};

const why = (said: Explanation): string =>
  say({
    ...bare(said),
    moved: (said.moved ?? []).filter(({ code }) => !PRIVATE.has(code)).map(bare),
  });

interface Said {
  readonly today: number;
  readonly estate: string;
  readonly stamp: ICAL.Time;
  pathOf(place: string): string;
}

/** An all-day event (RFC 5545 §3.6.1): its end is the day after. */
function eventOf(row: Stored, { estate, stamp, today, pathOf }: Said): ICAL.Component {
  const { window, number, description, place, intervalTitle } = row;
  const event = new ICAL.Component("vevent");
  // The same asset and interval stay one event, whatever its date becomes.
  event.addPropertyWithValue("uid", `${window.asset}.${window.interval}@${estate}`);
  event.addPropertyWithValue("dtstamp", stamp);
  event.addPropertyWithValue("dtstart", dateOf(window.due));
  event.addPropertyWithValue("dtend", dateOf(window.due + 1));
  // Who looks at today sees what is over: it stands on its own day and says so by its name.
  const over = window.latest < today ? "Overdue. " : "";
  event.addPropertyWithValue("summary", `${over}${intervalTitle}: ${number} ${description}`);
  event.addPropertyWithValue("location", pathOf(place));
  const latest = formatCivilDate(window.latest as CivilDate);
  event.addPropertyWithValue("description", `${why(window.why)}. At the latest ${latest}.`);
  event.addPropertyWithValue("transp", "TRANSPARENT");
  return event;
}

/**
 * What is due at a site, or for a person and the teams they are in, as an iCalendar object
 * (RFC 5545): all that is over and a year ahead, the soonest first. It names no person.
 */
export async function feedCalendar(ctx: Context, scope: NewFeed): Promise<string> {
  const site = "site" in scope ? scope.site : undefined;
  const keeper = "person" in scope ? scope.person : undefined;
  const today = await dayAsked(ctx, undefined, site);
  const places = new Map((await readPlaces(ctx)).map((place) => [place.id, place]));
  const pathOf = (id: string): string => {
    const place = places.get(id);
    if (place === undefined) return "";
    const above = place.parent === null ? "" : pathOf(place.parent);
    return above === "" ? place.name : `${above}, ${place.name}`;
  };
  const rows: Stored[] = [];
  const { legs } = await dueLegs(ctx, { site, keeper });
  for (const leg of legs)
    rows.push(
      ...(await selectDue(ctx.store.db)
        .where(and(...leg, lte(windows.due, today + DAYS_AHEAD)))
        .orderBy(asc(windows.due), asc(windows.id))
        .limit(MOST_EVENTS)),
    );
  rows.sort((a, b) => a.window.due - b.window.due || a.window.id - b.window.id);

  const estate = await readEstate(ctx);
  const calendar = new ICAL.Component("vcalendar");
  calendar.addPropertyWithValue("version", "2.0");
  calendar.addPropertyWithValue("prodid", "-//Roundbook//Due checks//EN");
  calendar.addPropertyWithValue("calscale", "GREGORIAN");
  calendar.addPropertyWithValue("method", "PUBLISH");
  const stamp = ICAL.Time.fromJSDate(new Date(Math.floor(ctx.clock() / 1000) * 1000), true);
  const said = { estate: estate?.id ?? "", stamp, today, pathOf };
  for (const row of rows.slice(0, MOST_EVENTS)) calendar.addSubcomponent(eventOf(row, said));
  return `${calendar.toString()}\r\n`;
}
