import { expect, test } from "vitest";
import { INTERVAL_SCHEMA } from "../due/interval-schema.ts";
import { numbersOf } from "../testing/starters/numbers-of.ts";
import { compileSchema } from "../validate/index.ts";
import { ASSET_TYPE_SCHEMA } from "../wire/design.ts";
import { STARTERS } from "./index.ts";

const CHECKLIST = "01890000-0000-7000-8000-000000000000";

test("there are fifteen starters, each with a key and a title of its own", () => {
  expect(STARTERS).toHaveLength(15);
  for (const part of ["key", "title"] as const)
    expect(new Set(STARTERS.map((starter) => starter[part])).size).toBe(STARTERS.length);
  for (const { key } of STARTERS) expect(key).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
});

test.each(STARTERS.map((starter) => [starter.key, starter] as const))(
  "%s: its interval and asset type are ones that the server takes",
  (_, { interval, assetType: { name, title, particulars } }) => {
    const body = { ...interval, assetType: name, checklist: CHECKLIST };
    expect(compileSchema(INTERVAL_SCHEMA)(body)).toMatchObject({ ok: true });
    const type = { assetType: name, title, particulars, checklists: [CHECKLIST] };
    expect(compileSchema(ASSET_TYPE_SCHEMA)(type)).toMatchObject({ ok: true });
  },
);

test("starters that share an asset type agree on its particulars", () => {
  const types = new Map<string, unknown>();
  for (const { assetType } of STARTERS) {
    expect(types.get(assetType.name) ?? assetType.particulars).toEqual(assetType.particulars);
    types.set(assetType.name, assetType.particulars);
  }
});

test("every starter that switches something on has stops, and every stop says what to do", () => {
  const stopping = STARTERS.filter(({ checklist }) => checklist.stops !== undefined);
  const keys = stopping.map(({ key }) => key);
  for (const key of [
    "portable-class-1",
    "portable-class-2",
    "extension-lead",
    "residual-current-device",
    "fixed-appliance",
  ])
    expect(keys).toContain(key);
  for (const { checklist } of stopping)
    for (const { say } of checklist.stops ?? []) expect(say.length).toBeGreaterThan(20);
});

test("how many numbers decide something in all starters", () => {
  const count = STARTERS.reduce((sum, { checklist }) => sum + numbersOf(checklist).length, 0);
  expect(count).toBe(198);
});
