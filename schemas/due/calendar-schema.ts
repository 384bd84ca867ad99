import type { FromSchema } from "json-schema-to-ts";
import { CIVIL_DATE } from "../shared/patterns.ts";

const reason = { type: "string", minLength: 1, maxLength: 200 } as const;
const date = { type: "string", pattern: CIVIL_DATE } as const;
const dayOfYear = { type: "string", pattern: "^(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$" } as const;

/** 1 for Monday to 7 for Sunday. */
const weekdays = {
  type: "array",
  maxItems: 7,
  items: {
    type: "object",
    properties: { weekday: { type: "integer", minimum: 1, maximum: 7 }, reason },
    required: ["weekday", "reason"],
    additionalProperties: false,
  },
} as const;
const holidays = {
  type: "array",
  maxItems: 2000,
  items: {
    type: "object",
    properties: { date, reason },
    required: ["date", "reason"],
    additionalProperties: false,
  },
} as const;
/** Both days belong to it. */
const closures = {
  type: "array",
  maxItems: 500,
  items: {
    type: "object",
    properties: { from: date, to: date, reason },
    required: ["from", "to", "reason"],
    additionalProperties: false,
  },
} as const;
/** Month and day, each year; both belong to it, and it may lead over the new year. */
const seasons = {
  type: "array",
  maxItems: 50,
  items: {
    type: "object",
    properties: { from: dayOfYear, to: dayOfYear, reason },
    required: ["from", "to", "reason"],
    additionalProperties: false,
  },
} as const;

/** When a place is closed; every reason is one that people read. */
export const CALENDAR_SCHEMA = {
  type: "object",
  properties: { weekdays, holidays, closures, seasons },
  additionalProperties: false,
} as const;
export type CalendarData = FromSchema<typeof CALENDAR_SCHEMA>;

/** A country of ISO 3166-1 or a part of it, such as GB-ENG. */
export const REGION = "^[A-Z]{2}(-[A-Z0-9]{1,3})?$";

/** What a manager says of a site; its holidays follow from the region. */
export const SITE_CALENDAR_SCHEMA = {
  type: "object",
  properties: { region: { type: "string", pattern: REGION }, weekdays, closures, seasons },
  additionalProperties: false,
} as const;
export type SiteCalendar = FromSchema<typeof SITE_CALENDAR_SCHEMA>;

/** The holidays of one year, written down so that a later list changes no date of the past. */
export const HOLIDAYS_SCHEMA = {
  type: "object",
  properties: {
    region: { type: "string", pattern: REGION },
    year: { type: "integer", minimum: 1900, maximum: 2200 },
    holidays,
  },
  required: ["region", "year", "holidays"],
  additionalProperties: false,
} as const;
export type Holidays = FromSchema<typeof HOLIDAYS_SCHEMA>;
