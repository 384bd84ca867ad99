import { CIVIL_DATE, NAME, POST_ENTRIES_SCHEMA, UUID } from "@roundbook/schemas";

/** Query parameters reach us as text: numbers are checked as text and then read. */
const limit = { type: "string", pattern: "^([1-9]\\d?|1\\d\\d|200)$" } as const;
const cursor = {
  type: "string",
  minLength: 1,
  maxLength: 400,
  pattern: "^[A-Za-z0-9_-]+$",
} as const;
const site = { type: "string", pattern: UUID } as const;
const q = { type: "string", maxLength: 200 } as const;
const on = { type: "string", pattern: CIVIL_DATE } as const;
const status = {
  enum: [
    "not-yet",
    "early",
    "due",
    "late-window",
    "overdue",
    "never-done",
    "undecided",
    "excused",
    "blocked",
  ],
} as const;

const parameters = <const P>(properties: P) =>
  ({ type: "object", properties, additionalProperties: false }) as const;

const assetType = { type: "string", pattern: NAME } as const;
const scope = { site, place: site, keeper: site, assetType } as const;

export const DUE_QUERY = parameters({ ...scope, on, status, q, cursor, limit });
export const DUE_COUNT_QUERY = parameters({ ...scope, on, q });
export const PLAN_QUERY = parameters({ site, keeper: site, on });
export const REGISTER_QUERY = parameters({ site, q, cursor, limit });
export const CURSOR_QUERY = parameters({ cursor, limit });
export const DEFECTS_QUERY = parameters({
  site,
  open: { enum: ["0", "1"] } as const,
  cursor,
  limit,
});
const seq = { type: "string", pattern: "^(0|[1-9]\\d{0,14})$" } as const;
/** What a device has of a site: the three members of its bundle that tell. */
export const CHANGES_QUERY = {
  ...parameters({ cursor: seq, stamp: { type: "string", maxLength: 2000 } as const, today: on }),
  required: ["cursor", "stamp", "today"],
} as const;
/** `after`: the sequence number that a device has read up to; `from`: the first day it keeps. */
export const SITE_HISTORY_QUERY = {
  ...parameters({ after: seq, from: on }),
  required: ["after", "from"],
} as const;
/** `of`: every issue of one checklist in place of the newest of each. */
export const CHECKLISTS_QUERY = parameters({ of: { type: "string", pattern: UUID } as const });

/** POST /api/checklists/:id/withdraw */
export const WITHDRAW_SCHEMA = {
  type: "object",
  properties: { reason: { type: "string", minLength: 1, maxLength: 1000 } },
  required: ["reason"],
  additionalProperties: false,
} as const;

const { entries } = POST_ENTRIES_SCHEMA.properties;
/** An entry that is not well formed is refused by itself, not with the whole delivery. */
export const ENTRIES_ENVELOPE = {
  ...POST_ENTRIES_SCHEMA,
  properties: {
    entries: {
      ...entries,
      items: {
        ...entries.items,
        properties: {
          ...entries.items.properties,
          entry: {
            type: "object",
            properties: { id: { type: "string", pattern: UUID } },
            required: ["id"],
          },
        },
      },
    },
  },
} as const;
