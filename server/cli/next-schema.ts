import {
  CALENDAR_SCHEMA,
  type CalendarData,
  type DueFacts,
  INSTANT,
  INTERVAL_RULE_SCHEMA,
  INTERVAL_SCHEMA,
  type IntervalDefinition,
  type IntervalRule,
  PARTICULAR_VALUES,
} from "@roundbook/schemas";
import { compileSchema } from "@roundbook/schemas/validate";

const text = { type: "string", minLength: 1, maxLength: 200 } as const;
const day = { type: "string", maxLength: 10 } as const;
const instant = { type: "string", pattern: INSTANT } as const;
const list = (properties: object, required: readonly string[]) => ({
  type: "array",
  maxItems: 10_000,
  items: { type: "object", properties, required, additionalProperties: false },
});

const moment = { entry: text, on: day, at: instant } as const;
const done = {
  ...moment,
  counts: { type: "boolean" },
  next: { type: "object", additionalProperties: { type: ["string", "null"], maxLength: 40 } },
  broughtForward: { type: "boolean" },
  coveredBy: text,
} as const;

const lineSchema = (interval: object) => ({
  type: "object",
  properties: {
    interval,
    history: list(done, ["on"]),
    on: day,
    calendar: CALENDAR_SCHEMA,
    registered: day,
    particulars: PARTICULAR_VALUES,
    events: list({ ...moment, kind: { enum: ["repaired", "modified", "returned"] } }, [
      "kind",
      "on",
    ]),
    meter: list({ ...moment, value: { type: "number" }, unit: text }, ["on", "value", "unit"]),
    override: {
      type: "object",
      properties: { rule: INTERVAL_RULE_SCHEMA, reason: text, until: day },
      required: ["rule", "reason"],
      additionalProperties: false,
    },
  },
  required: ["interval", "history", "on"],
  additionalProperties: false,
});

export interface Moment {
  readonly entry?: string;
  readonly on: string;
  readonly at?: string;
}
interface Written extends Moment {
  readonly counts?: boolean;
  readonly next?: Readonly<Record<string, string | null>>;
  readonly broughtForward?: boolean;
  readonly coveredBy?: string;
}
export interface LineData {
  readonly interval: IntervalDefinition | IntervalRule;
  readonly history: readonly Written[];
  readonly on: string;
  readonly calendar?: CalendarData;
  readonly registered?: string;
  readonly particulars?: NonNullable<DueFacts["particulars"]>;
  readonly events?: readonly (Moment & { readonly kind: "repaired" | "modified" | "returned" })[];
  readonly meter?: readonly (Moment & { readonly value: number; readonly unit: string })[];
  readonly override?: {
    readonly rule: IntervalRule;
    readonly reason: string;
    readonly until?: string;
  };
}

/** A line whose interval is a whole definition. */
export const parseDefined = compileSchema<LineData>(lineSchema(INTERVAL_SCHEMA));
/** A line whose interval is a rule alone. */
export const parseBare = compileSchema<LineData>(lineSchema(INTERVAL_RULE_SCHEMA));
