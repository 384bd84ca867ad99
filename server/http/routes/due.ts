import { changeParticulars } from "../../usecases/change-particulars.ts";
import { readRegions } from "../../usecases/holidays.ts";
import { readIntervalDates } from "../../usecases/interval-dates.ts";
import {
  discardIntervalDraft,
  readIntervalDrafts,
  saveIntervalDraft,
} from "../../usecases/interval-drafts.ts";
import { readIntervalEffect } from "../../usecases/interval-effect.ts";
import { endOverride, overrideInterval } from "../../usecases/override-interval.ts";
import { readPlan } from "../../usecases/plan.ts";
import { readCalendarRows, readTeams } from "../../usecases/read-teams.ts";
import { setCalendar } from "../../usecases/set-calendar.ts";
import { setKeeper, setTeam, setTime } from "../../usecases/set-keeper.ts";
import type { Handlers } from "../handler.ts";

/** What due dates follow from beside intervals: calendars, rounds, and rules of single assets. */
export const dueRoutes: Handlers<
  | "GET /api/calendars"
  | "GET /api/holiday-regions"
  | "PUT /api/sites/:id/calendar"
  | "GET /api/teams"
  | "PUT /api/teams/:id"
  | "PUT /api/places/:id/keeper"
  | "PUT /api/people/:id/time"
  | "GET /api/plan"
  | "POST /api/intervals/dates"
  | "POST /api/intervals/effect"
  | "GET /api/interval-drafts"
  | "PUT /api/interval-drafts/:id"
  | "DELETE /api/interval-drafts/:id"
  | "PUT /api/assets/:id/particulars"
  | "PUT /api/assets/:id/overrides/:interval"
  | "DELETE /api/assets/:id/overrides/:interval"
> = {
  "GET /api/calendars": async ({ ctx }) => ({ rows: await readCalendarRows(ctx) }),
  "GET /api/holiday-regions": async () => ({ rows: await readRegions() }),
  "PUT /api/sites/:id/calendar": ({ ctx, session, body, param }) =>
    setCalendar(ctx, session, param("id"), body),

  "GET /api/teams": async ({ ctx }) => ({ rows: await readTeams(ctx) }),
  "PUT /api/teams/:id": ({ ctx, session, body, param }) => setTeam(ctx, session, param("id"), body),
  "PUT /api/places/:id/keeper": ({ ctx, session, body, param }) =>
    setKeeper(ctx, session, param("id"), body.keeper),
  "PUT /api/people/:id/time": ({ ctx, session, body, param }) =>
    setTime(ctx, session, param("id"), body.minutes),

  "GET /api/plan": ({ ctx, query }) => readPlan(ctx, query),
  "POST /api/intervals/dates": ({ ctx, body }) =>
    readIntervalDates(ctx, body.definition, body.asset),
  "POST /api/intervals/effect": ({ ctx, body }) =>
    readIntervalEffect(ctx, body.definition, body.interval),
  "GET /api/interval-drafts": async ({ ctx }) => ({ rows: await readIntervalDrafts(ctx) }),
  "PUT /api/interval-drafts/:id": ({ ctx, session, body, param }) =>
    saveIntervalDraft(ctx, session, param("id"), body),
  "DELETE /api/interval-drafts/:id": ({ ctx, param }) => discardIntervalDraft(ctx, param("id")),

  "PUT /api/assets/:id/particulars": ({ ctx, session, body, param }) =>
    changeParticulars(ctx, session, param("id"), body),
  "PUT /api/assets/:id/overrides/:interval": ({ ctx, session, body, param }) =>
    overrideInterval(ctx, session, param("id"), param("interval"), body),
  "DELETE /api/assets/:id/overrides/:interval": ({ ctx, session, body, param }) =>
    endOverride(ctx, session, param("id"), param("interval"), body.reason),
};
