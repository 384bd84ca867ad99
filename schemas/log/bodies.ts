import { COMPARATORS } from "../checklist/answer-types.ts";
import { PARTICULARS_SCHEMA } from "../checklist/meta-schema.ts";
import { HOLIDAYS_SCHEMA, SITE_CALENDAR_SCHEMA } from "../due/calendar-schema.ts";
import { INTERVAL_SCHEMA } from "../due/interval-schema.ts";
import { INTERVAL_RULE_SCHEMA } from "../due/rule-schema.ts";
import { ANSWER_NAME, CIVIL_DATE, INSTANT, NAME, SHA256, UUID } from "../shared/patterns.ts";

const uuid = { type: "string", pattern: UUID } as const;
const sha256 = { type: "string", pattern: SHA256 } as const;
const name = { type: "string", pattern: NAME } as const;
/** A point, and in a repeat `point@member`. */
const answerName = { type: "string", pattern: ANSWER_NAME } as const;
const civilDate = { type: "string", pattern: CIVIL_DATE } as const;
const instant = { type: "string", pattern: INSTANT } as const;
const label = { type: "string", minLength: 1, maxLength: 200 } as const;
const reason = { type: "string", minLength: 1, maxLength: 1000 } as const;
const number = { type: "string", minLength: 1, maxLength: 64 } as const;
/** Salted SHA-256 of personal text kept beside the log. */
const commitment = {
  type: "object",
  properties: { commit: sha256 },
  required: ["commit"],
  additionalProperties: false,
} as const;
export const PARTICULAR_VALUES = {
  type: "object",
  propertyNames: { pattern: NAME },
  additionalProperties: { type: ["number", "string", "boolean"] },
  maxProperties: 100,
} as const;
const particulars = PARTICULAR_VALUES;
/** Where an imported row came from: the same key with the same content is never added twice. */
const source = {
  type: "object",
  properties: { name: label, key: { type: "string", maxLength: 400 }, content: sha256 },
  required: ["name", "key", "content"],
  additionalProperties: false,
} as const;
const checklistRef = {
  type: "object",
  properties: { id: uuid, issue: { type: "integer", minimum: 1 }, hash: sha256 },
  required: ["id", "issue", "hash"],
  additionalProperties: false,
} as const;
const answers = {
  type: "object",
  propertyNames: { pattern: ANSWER_NAME },
  maxProperties: 5000,
} as const;
const evidence = {
  type: "object",
  propertyNames: { pattern: ANSWER_NAME },
  additionalProperties: {
    type: "array",
    maxItems: 12,
    items: {
      type: "object",
      properties: { kind: { enum: ["photo", "note"] }, sha256, note: commitment },
      required: ["kind"],
      additionalProperties: false,
    },
  },
} as const;

/** In any unit that converts to the point's own. */
export const sampleResult = {
  type: "object",
  properties: {
    value: { type: "number" },
    unit: { type: "string", minLength: 1, maxLength: 40 },
    comparator: { enum: COMPARATORS },
  },
  required: ["value", "unit"],
  additionalProperties: false,
} as const;

const body = <const P, const R extends readonly string[]>(properties: P, required: R) =>
  ({ type: "object", properties, required, additionalProperties: false }) as const;

/** What each kind of entry says. Whatever a projection reads is here. */
export const BODY_SCHEMAS = {
  "estate-named": body({ name: label }, ["name"]),
  "person-added": body(
    {
      person: uuid,
      role: { enum: ["owner", "manager", "inspector", "auditor"] },
      name: commitment,
    },
    ["person", "role", "name"],
  ),
  "device-enrolled": body(
    { device: uuid, person: uuid, key: { type: "string", maxLength: 400 }, label },
    ["device", "person", "key"],
  ),
  "place-added": body(
    {
      place: uuid,
      parent: { type: ["string", "null"] },
      level: { enum: ["site", "building", "floor", "room"] },
      code: label,
      name: label,
      /** IANA zone; a site has one, what lies in it shares it. */
      zone: label,
      /** Walking order among its sisters. */
      order: { type: "integer" },
    },
    ["place", "parent", "level", "code", "name"],
  ),
  "asset-type-issued": body(
    {
      assetType: name,
      version: { type: "integer", minimum: 1 },
      title: label,
      particulars: PARTICULARS_SCHEMA,
      checklists: { type: "array", items: uuid, maxItems: 50, uniqueItems: true },
    },
    ["assetType", "version", "title", "particulars", "checklists"],
  ),
  "checklist-issued": body(
    {
      checklist: checklistRef,
      document: { type: "object" },
      reason: { type: "string", maxLength: 1000 },
    },
    ["checklist", "document"],
  ),
  "checklist-withdrawn": body(
    { checklist: checklistRef, reason: { type: "string", maxLength: 1000 } },
    ["checklist"],
  ),
  "interval-set": body({ interval: uuid, definition: INTERVAL_SCHEMA, reason: label }, [
    "interval",
    "definition",
  ]),
  /** Another rule for one asset; it holds to the end of `until`, or until it is ended. */
  "interval-overridden": body(
    { interval: uuid, rule: INTERVAL_RULE_SCHEMA, reason, until: civilDate },
    ["interval", "rule", "reason"],
  ),
  "override-ended": body({ interval: uuid, reason }, ["interval", "reason"]),
  /** When a site is closed, as a whole; the holidays of its region come from `holidays-set`. */
  "calendar-set": body({ site: uuid, calendar: SITE_CALENDAR_SCHEMA, reason: label }, [
    "site",
    "calendar",
  ]),
  "holidays-set": body(HOLIDAYS_SCHEMA.properties, HOLIDAYS_SCHEMA.required),
  /** People who share their rounds; a later entry replaces the earlier one. */
  "team-set": body(
    {
      team: uuid,
      name: label,
      members: { type: "array", items: uuid, maxItems: 200, uniqueItems: true },
    },
    ["team", "name", "members"],
  ),
  /** Who does the rounds of a place and of what lies in it; null: nobody in particular. */
  "keeper-set": body({ place: uuid, keeper: { type: ["string", "null"] } }, ["place", "keeper"]),
  /** How many minutes a week a person has for rounds. */
  "time-set": body({ person: uuid, minutes: { type: "integer", minimum: 0, maximum: 10_080 } }, [
    "person",
    "minutes",
  ]),
  "interval-ended": body({ interval: uuid, reason: label }, ["interval"]),
  registered: body(
    {
      number,
      assetType: name,
      description: label,
      place: uuid,
      particulars,
      serial: label,
      /** SHA-256 of a picture of the asset itself. */
      photo: sha256,
      order: { type: "integer" },
      source,
    },
    ["number", "assetType", "description", "place", "particulars"],
  ),
  /** It stands elsewhere from now on; of several the one that happened last counts. */
  moved: body({ place: uuid }, ["place"]),
  /** All particulars as they are from now on; `modified` asks for the checks that follow a modification. */
  "particulars-changed": body({ particulars, reason, modified: { type: "boolean" } }, [
    "particulars",
    "reason",
  ]),
  "brought-forward": body({ checklist: uuid, doneOn: civilDate, source }, ["checklist", "doneOn"]),
  "status-changed": body(
    {
      status: {
        enum: [
          "in-service",
          "out-of-service",
          "quarantined",
          "under-repair",
          "in-store",
          "missing",
          "retired",
        ],
      },
      reason: { type: "string", maxLength: 1000 },
    },
    ["status"],
  ),
  inspection: body(
    {
      checklist: checklistRef,
      particulars,
      answers,
      evidence,
      /** Points answered by one declaration for their group, never readings. */
      declared: { type: "array", items: answerName, maxItems: 1000, uniqueItems: true },
      cautions: {
        type: "object",
        properties: { acknowledgedAt: instant },
        additionalProperties: false,
      },
      startedAt: instant,
      /**
       * Of a paper sheet that was keyed in afterwards: the entry's day is the day it was done on, and
       * no instant of it is known. `sheet`: hashes of photos of the paper.
       */
      fromPaper: {
        type: "object",
        properties: {
          keyedAt: instant,
          doneBy: commitment,
          sheet: { type: "array", items: sha256, maxItems: 20, uniqueItems: true },
        },
        required: ["keyedAt"],
        additionalProperties: false,
      },
      judgement: { type: "object" },
      source,
    },
    ["checklist", "particulars", "answers", "judgement"],
  ),
  "not-completed": body(
    {
      checklist: checklistRef,
      reason: { enum: ["no-access", "not-found", "in-use", "unsafe-to-test", "closed"] },
      note: commitment,
      answers,
    },
    ["checklist", "reason"],
  ),
  "defect-step": body(
    {
      /** Entry id of the inspection that raised it, a colon, and the name of the answer. */
      defect: { type: "string", maxLength: 140 },
      step: { enum: ["made-safe", "repaired", "verified", "deferred"] },
      note: commitment,
      until: civilDate,
    },
    ["defect", "step"],
  ),
  /** What the laboratory found in a sample of an inspection; of two for one sample the later counts. */
  "result-received": body(
    {
      of: uuid,
      point: answerName,
      result: sampleResult,
      /** The day on the laboratory's report. */
      reportedOn: civilDate,
      note: commitment,
    },
    ["of", "point", "result"],
  ),
  correction: body({ of: uuid, note: commitment }, ["of", "note"]),
} as const;

export type EntryKind = keyof typeof BODY_SCHEMAS;
export const ENTRY_KINDS = Object.keys(BODY_SCHEMAS) as readonly EntryKind[];
/** The kinds a device makes on the round; every other kind is made by the server for a signed-in person. */
export const DEVICE_KINDS = [
  "registered",
  "inspection",
  "not-completed",
  "defect-step",
  "status-changed",
  "moved",
  "result-received",
  "correction",
] as const satisfies readonly EntryKind[];
