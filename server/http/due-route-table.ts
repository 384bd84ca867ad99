import {
  CHANGE_PARTICULARS_SCHEMA,
  END_OVERRIDE_SCHEMA,
  INTERVAL_BODY_SCHEMA,
  INTERVAL_DATES_SCHEMA,
  INTERVAL_EFFECT_SCHEMA,
  KEEPER_SCHEMA,
  NEW_FEED_SCHEMA,
  OVERRIDE_SCHEMA,
  SAVE_INTERVAL_DRAFT_SCHEMA,
  SITE_CALENDAR_SCHEMA,
  TEAM_SCHEMA,
  TIME_SCHEMA,
} from "@roundbook/schemas";
import { DUE_COUNT_QUERY, DUE_QUERY, PLAN_QUERY } from "./query-schemas.ts";
import { all, desk, deskVerb, type RouteRule } from "./route-rule.ts";

/** Routes around due dates, as every other in the table of all. */
export const DUE_ROUTES = {
  "GET /api/calendars": { ...all, says: "When sites are closed, holidays included" },
  "GET /api/holiday-regions": { ...all, says: "Regions whose holidays are known" },
  "PUT /api/sites/:id/calendar": {
    ...deskVerb,
    says: "Say when a site is closed",
    body: SITE_CALENDAR_SCHEMA,
    reply: 204,
  },
  "GET /api/teams": { ...all, says: "Teams" },
  "PUT /api/teams/:id": {
    ...deskVerb,
    says: "Make or change a team",
    body: TEAM_SCHEMA,
    reply: 204,
  },
  "PUT /api/places/:id/keeper": {
    ...deskVerb,
    says: "Say who does the rounds of a place",
    body: KEEPER_SCHEMA,
    reply: 204,
  },
  "PUT /api/people/:id/time": {
    ...deskVerb,
    says: "Say how many minutes a week a person has for rounds",
    body: TIME_SCHEMA,
    reply: 204,
  },
  "GET /api/due": { ...all, says: "What is due, in order", query: DUE_QUERY },
  "GET /api/due/count": { ...all, says: "How much is due", query: DUE_COUNT_QUERY },
  "GET /api/plan": { ...all, says: "What is coming in 12 months, by week", query: PLAN_QUERY },
  "PUT /api/assets/:id/particulars": {
    ...deskVerb,
    says: "Say an asset's particulars anew",
    body: CHANGE_PARTICULARS_SCHEMA,
    reply: 204,
  },
  "PUT /api/assets/:id/overrides/:interval": {
    ...deskVerb,
    says: "Give an asset a rule of its own by an interval",
    body: OVERRIDE_SCHEMA,
    reply: 204,
  },
  "DELETE /api/assets/:id/overrides/:interval": {
    ...deskVerb,
    says: "End an asset's own rule",
    body: END_OVERRIDE_SCHEMA,
    reply: 204,
  },
  "GET /api/intervals": { ...all, says: "Intervals" },
  "POST /api/intervals": {
    ...deskVerb,
    says: "Set an interval",
    body: INTERVAL_BODY_SCHEMA,
    reply: 201,
  },
  "PUT /api/intervals/:id": {
    ...deskVerb,
    says: "Change an interval",
    body: INTERVAL_BODY_SCHEMA,
    reply: 204,
  },
  "DELETE /api/intervals/:id": { ...deskVerb, says: "End an interval", reply: 204 },
  "POST /api/intervals/dates": {
    ...desk,
    says: "The next dates of one asset, if an interval read so",
    body: INTERVAL_DATES_SCHEMA,
  },
  "POST /api/intervals/effect": {
    ...desk,
    says: "What an interval would do today, if it read so",
    body: INTERVAL_EFFECT_SCHEMA,
  },
  "GET /api/interval-drafts": { ...desk, says: "Intervals that are not in force yet" },
  "PUT /api/interval-drafts/:id": {
    ...desk,
    says: "Keep an interval that is not in force yet, over the revision read",
    body: SAVE_INTERVAL_DRAFT_SCHEMA,
  },
  "DELETE /api/interval-drafts/:id": { ...desk, says: "Throw such an interval away", reply: 204 },
  "GET /api/feeds": { ...desk, says: "Calendar addresses" },
  "POST /api/feeds": {
    ...desk,
    says: "Make a secret calendar address of a site or a person",
    body: NEW_FEED_SCHEMA,
    reply: 201,
  },
  "DELETE /api/feeds/:id": { ...desk, says: "Revoke a calendar address", reply: 204 },
  "GET /feeds/:file": { who: "anyone", says: "What is due as iCalendar, by its secret address" },
} as const satisfies Readonly<Record<string, RouteRule>>;
