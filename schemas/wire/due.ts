import type { FromSchema } from "json-schema-to-ts";
import type { SiteCalendar } from "../due/calendar-schema.ts";
import { INTERVAL_SCHEMA, type IntervalDefinition } from "../due/interval-schema.ts";
import { INTERVAL_RULE_SCHEMA, type IntervalRule } from "../due/rule-schema.ts";
import { PARTICULAR_VALUES as particulars } from "../log/bodies.ts";
import { CIVIL_DATE, UUID } from "../shared/patterns.ts";
import type { Explanation } from "../shared/problem.ts";

const uuid = { type: "string", pattern: UUID } as const;
const civilDate = { type: "string", pattern: CIVIL_DATE } as const;
const label = { type: "string", minLength: 1, maxLength: 200 } as const;
const reason = { type: "string", minLength: 1, maxLength: 1000 } as const;

const body = <const P, const R extends readonly string[]>(properties: P, required: R) =>
  ({ type: "object", properties, required, additionalProperties: false }) as const;

/** POST /api/intervals/dates: the next ten dates of one asset, if the interval were so. */
export const INTERVAL_DATES_SCHEMA = body({ definition: INTERVAL_SCHEMA, asset: uuid }, [
  "definition",
]);
/** POST /api/intervals/effect: `interval` names the one that would change. */
export const INTERVAL_EFFECT_SCHEMA = body({ definition: INTERVAL_SCHEMA, interval: uuid }, [
  "definition",
]);
/** PUT /api/interval-drafts/:id; `revision` is the one read, null for a new draft. */
export const SAVE_INTERVAL_DRAFT_SCHEMA = body(
  { revision: { type: ["integer", "null"] }, definition: { type: "object" } },
  ["revision", "definition"],
);
/** PUT /api/assets/:id/overrides/:interval */
export const OVERRIDE_SCHEMA = body({ rule: INTERVAL_RULE_SCHEMA, reason, until: civilDate }, [
  "rule",
  "reason",
]);
/** DELETE /api/assets/:id/overrides/:interval */
export const END_OVERRIDE_SCHEMA = body({ reason }, ["reason"]);
/** PUT /api/assets/:id/particulars */
export const CHANGE_PARTICULARS_SCHEMA = body(
  { particulars, reason, modified: { type: "boolean" } },
  ["particulars", "reason"],
);
/** PUT /api/teams/:id */
export const TEAM_SCHEMA = body(
  { name: label, members: { type: "array", items: uuid, maxItems: 200, uniqueItems: true } },
  ["name", "members"],
);
/** PUT /api/places/:id/keeper */
export const KEEPER_SCHEMA = body({ keeper: { type: ["string", "null"] } }, ["keeper"]);
/** PUT /api/people/:id/time: minutes a week. */
export const TIME_SCHEMA = body({ minutes: { type: "integer", minimum: 0, maximum: 10_080 } }, [
  "minutes",
]);
/** POST /api/feeds */
export const NEW_FEED_SCHEMA = {
  oneOf: [body({ site: uuid }, ["site"]), body({ person: uuid }, ["person"])],
} as const;
/** PUT /api/digest: where the signed-in person gets a digest, and on which weekdays, 1 for Monday. */
export const DIGEST_SCHEMA = body(
  {
    address: { type: ["string", "null"], maxLength: 254 },
    weekdays: {
      type: "array",
      items: { type: "integer", minimum: 1, maximum: 7 },
      uniqueItems: true,
      maxItems: 7,
    },
  },
  ["address", "weekdays"],
);

export type SaveIntervalDraft = FromSchema<typeof SAVE_INTERVAL_DRAFT_SCHEMA>;
export type OverrideBody = FromSchema<typeof OVERRIDE_SCHEMA>;
export type ChangeParticulars = FromSchema<typeof CHANGE_PARTICULARS_SCHEMA>;
export type TeamBody = FromSchema<typeof TEAM_SCHEMA>;
export type NewFeed = FromSchema<typeof NEW_FEED_SCHEMA>;
export type DigestBody = FromSchema<typeof DIGEST_SCHEMA>;

/** One date of a series. Civil dates are ISO strings. */
export interface DatePreview {
  readonly earliest: string;
  readonly due: string;
  readonly latest: string;
  /** Where it would fall without calendar and bounds; absent when it falls there. */
  readonly plain?: string;
  readonly why: Explanation;
}

/** Reply of POST /api/intervals/dates. */
export interface IntervalDates {
  /** The asset asked for, or the first of the type; null when there is none. */
  readonly asset: {
    readonly id: string;
    readonly number: string;
    readonly description: string;
  } | null;
  /** At most ten, each as if the one before were done on its due day; none for a rule without dates. */
  readonly dates: readonly DatePreview[];
  /** Why there are no dates, or no more. */
  readonly ends: Explanation | null;
}

/** Reply of POST /api/intervals/effect. */
export interface IntervalEffect {
  readonly assets: number;
  readonly overdueNow: number;
  readonly overdueThen: number;
  /** Numbers of assets that would be overdue, at most ten. */
  readonly examples: readonly string[];
  readonly sooner: number;
  readonly later: number;
  readonly undecided: number;
  /** Minutes more of work in a mean month; negative for less, null where the rule does not tell. */
  readonly minutesAMonth: number | null;
}

/** Dates by a changed interval are worked out in the background: how far. */
export interface IntervalProgress {
  readonly interval: string;
  readonly definition: IntervalDefinition;
  readonly done: number;
  readonly of: number;
}

export interface IntervalDraftRow {
  readonly id: string;
  readonly revision: number;
  /** As the designer sent it; it need not be right yet. */
  readonly definition: object;
  readonly changedAt: string;
}

export interface OverrideRow {
  readonly asset: string;
  readonly interval: string;
  readonly rule: IntervalRule;
  readonly reason: string;
  readonly until: string | null;
}

export interface CalendarRow {
  readonly site: string;
  readonly calendar: SiteCalendar;
  /** Of its region, of the years that are written down. */
  readonly holidays: readonly { readonly date: string; readonly reason: string }[];
}

export interface TeamRow {
  readonly id: string;
  readonly name: string;
  readonly members: readonly string[];
}

/** A count, up to `DUE_COUNTED`; `more` when there is more. */
export interface Counted {
  readonly count: number;
  readonly more: boolean;
}

/** Reply of GET /api/due/count. */
export interface DueCounts {
  readonly all: Counted;
  readonly overdue: Counted;
  /** From the due day on, or never done and expected by now. */
  readonly due: Counted;
  readonly neverDone: Counted;
  readonly blocked: Counted;
  readonly excused: Counted;
  readonly undecided: Counted;
}

export interface PlanWeek {
  /** Its Monday. */
  readonly week: string;
  readonly checks: number;
  readonly minutes: number;
}

/** Reply of GET /api/plan: what is coming in the next 12 months, by ISO week of the due date. */
export interface Plan {
  readonly from: string;
  readonly weeks: readonly PlanWeek[];
  /** Overdue or undecided by now: in no week. */
  readonly overdue: { readonly checks: number; readonly minutes: number };
  /** Minutes a week of those who keep the places asked for; null when nobody's time is known. */
  readonly minutesAWeek: number | null;
  readonly keepers: readonly string[];
  /** Weeks with more minutes than there are, and what of it may move inside its window. */
  readonly heavy: readonly {
    readonly week: string;
    readonly over: number;
    readonly mayComeForward: number;
    readonly mayWait: number;
  }[];
  readonly closures: readonly {
    readonly site: string;
    readonly from: string;
    readonly to: string;
    readonly reason: string;
    readonly excused: number;
    readonly broughtForward: number;
    readonly onReopening: number;
  }[];
}

/** Reply of GET /api/digest. */
export interface DigestRow {
  readonly address: string | null;
  readonly weekdays: readonly number[];
  /** Whether the server has a mail server to send by. */
  readonly canSend: boolean;
  /** The last one: when it was sent, or why not yet. */
  readonly last: {
    readonly day: string;
    readonly sentAt: string | null;
    readonly waits: boolean;
    readonly error: string | null;
  } | null;
}

export interface FeedRow {
  readonly id: string;
  readonly scope: NewFeed;
  readonly createdAt: string;
  readonly revokedAt: string | null;
}

/** Reply of POST /api/feeds: the address is told once and kept as a hash. */
export interface FeedMade {
  readonly id: string;
  readonly path: string;
}
