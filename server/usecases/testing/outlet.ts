import { createHash } from "node:crypto";
import {
  type Answers,
  type Checklist,
  canonicalize,
  type Entry,
  issueDocument,
} from "@roundbook/schemas";
import { appendNow } from "../append-now.ts";
import type { Session } from "../context.ts";
import { judgeFor } from "../judge-for.ts";
import { sealEntries } from "../seal-entries.ts";
import { setInterval } from "../set-interval.ts";
import { type TestEstate, testEstate } from "./estate.ts";

/** A water outlet: a sample for lead, a flow that must not drift, and two valves. */
const OUTLET = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  dialect: "urn:roundbook:checklist:1",
  title: "Outlet",
  type: "object",
  groups: [
    {
      id: "valves",
      title: "Valves",
      points: ["valve"],
      repeat: {
        each: "Valve",
        members: [
          { id: "hot", title: "Hot valve" },
          { id: "cold", title: "Cold valve" },
        ],
      },
    },
  ],
  properties: {
    lead: {
      $ref: "#/$defs/sample",
      title: "Lead in the water",
      quantity: { unit: "ug/L", alsoIn: ["mg/L"] },
      limits: [{ max: 10, basis: "Own practice" }],
      grade: { means: "by-a-date", within: "P7D" },
    },
    flow: {
      $ref: "#/$defs/reading",
      title: "Flow",
      quantity: { unit: "L/min" },
      limits: [{ sameAsLast: { within: 1, whenNone: "not-applied" }, basis: "Own practice" }],
      ask: { absentAllowed: ["not-measurable"] },
    },
    valve: {
      $ref: "#/$defs/check",
      title: "Valve closes?",
      limits: [{ accept: ["ok"], basis: "Own practice" }],
    },
  },
  additionalProperties: false,
} as const;

export const MANAGER = (estate: TestEstate): Session => ({
  person: estate.ids.person,
  role: "manager",
});

/** The test estate with a checklist for outlets, due yearly, and one outlet. */
export async function outletEstate() {
  const estate = await testEstate();
  const { ctx, session } = estate;
  const by = MANAGER(estate);
  const document = issueDocument(OUTLET as unknown as Checklist);
  const hash = createHash("sha256").update(canonicalize(document)).digest("hex");
  const ref = { id: estate.newId(), issue: 1, hash };
  await appendNow(ctx, by, {
    kind: "checklist-issued",
    asset: null,
    body: { checklist: ref, document: document as never },
  });
  await setInterval(ctx, by, {
    title: "Yearly",
    assetType: "door",
    checklist: ref.id,
    rule: { kind: "from-last-done", every: "P1Y" },
  });
  const asset = estate.newId();
  const seal = async (...entries: readonly Entry[]) => {
    const signed = entries.map((one) => estate.signed(one));
    return sealEntries(ctx, session, signed);
  };
  await seal(estate.registered(asset, "1", "2025-01-01"));
  const inspection = async (answers: Answers, day: string): Promise<Entry> => {
    const judge = await judgeFor(ctx, ctx.store.db, ref.hash);
    const judgement = judge.judge({ particulars: {}, answers, on: day });
    return estate.entry(
      "inspection",
      asset,
      { checklist: ref, particulars: {}, answers, judgement },
      day,
    );
  };
  /** What the laboratory found, in µg/L unless told otherwise. */
  const result = (of: string, value: number, day: string, more: object = {}): Entry =>
    estate.entry(
      "result-received",
      asset,
      { of, point: "lead", result: { value, unit: "ug/L" }, ...more },
      day,
    );
  return { estate, ctx, ref, asset, seal, inspection, result };
}

export const VALVES = { "valve@hot": "ok", "valve@cold": "ok" } as const;
/** All is well but for the sample, which is at the laboratory. */
export const SAMPLED = {
  ...VALVES,
  lead: { sample: "B-17" },
  flow: { absent: { reason: "not-measurable" } },
} as const;
