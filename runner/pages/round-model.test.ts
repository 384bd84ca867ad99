import { type AssetRow, civilDate, type DueRow, type SiteBundle } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import type { WalkStroke } from "../form/index.ts";
import type { OutboxRow, SentRow } from "../offline/database.ts";
import { roundOf, strokesOf, walkPart } from "./round-model.ts";

const today = civilDate(2026, 10, 13);

const asset = (number: string): AssetRow => ({
  id: number,
  number,
  assetType: "lead",
  description: "Lead",
  site: "s",
  place: "slipway",
  path: ["Boat Workshop", "Slipway"],
  particulars: {},
  serial: null,
  status: "in-service",
  order: 0,
  registeredOn: "2026-01-01",
});

const due = (number: string, change: Partial<DueRow> = {}): DueRow => ({
  asset: number,
  number,
  description: "Lead",
  site: "s",
  place: "slipway",
  interval: "half-yearly",
  intervalTitle: "Half-yearly",
  assetType: "lead",
  checklist: "list",
  keeper: null,
  minutes: 5,
  earliest: "2026-10-01",
  due: "2026-10-13",
  latest: "2026-10-20",
  status: "due",
  lastDone: null,
  lastVerdict: null,
  why: { code: "never-done", params: {} },
  ...change,
});

const bundle = (rows: readonly DueRow[], change: Partial<SiteBundle> = {}): SiteBundle => ({
  site: { id: "s", parent: null, level: "site", code: "4", name: "", zone: "UTC", order: 0 },
  places: [],
  assets: rows.map((row) => asset(row.asset)),
  due: rows,
  assetTypes: [],
  intervals: [],
  calendar: {},
  overrides: [],
  checklists: [],
  lastResults: [],
  defects: [],
  cursor: 1,
  stamp: "1",
  today: "2026-10-13",
  ...change,
});

const nothing = { outbox: [], sent: [], drafts: [] };
const inspection = (complete: boolean) =>
  ({
    signed: {
      entry: {
        kind: "inspection",
        asset: "1",
        civilDate: "2026-10-13",
        body: { checklist: { id: "list" }, judgement: { complete, overall: "undecided" } },
      },
    },
  }) as unknown as OutboxRow;
const states = (...given: Parameters<typeof roundOf>) =>
  roundOf(...given).all.map((row) => row.state);

describe("what is done on the round", () => {
  test("an incomplete inspection sealed today leaves the asset to be done", () => {
    const lastResults = [
      {
        asset: "1",
        checklist: "list",
        entry: "e",
        on: "2026-10-13",
        overall: "undecided",
        readings: {},
      },
    ] as const;
    expect(states({ bundle: bundle([due("1")], { lastResults }), ...nothing }, today)).toEqual([
      "to-do",
    ]);
  });

  test("what moved the due date today is done, though its next window is far off", () => {
    const moved = due("1", {
      earliest: "2027-04-01",
      latest: "2027-04-20",
      lastDone: "2026-10-13",
    });
    expect(states({ bundle: bundle([moved]), ...nothing }, today)).toEqual(["done"]);
  });

  test("a finished check counts while it waits, an incomplete one does not", () => {
    const given = { bundle: bundle([due("1")]), ...nothing };
    expect(states({ ...given, outbox: [inspection(true)] }, today)).toEqual(["done"]);
    expect(states({ ...given, outbox: [inspection(false)] }, today)).toEqual(["to-do"]);
  });

  test("a check that was sent stays done before the site is read again", () => {
    const sent = [{ kind: "inspection", asset: "1", checklist: "list", counts: true }] as SentRow[];
    expect(states({ bundle: bundle([due("1")]), ...nothing, sent }, today)).toEqual(["done"]);
  });

  test("a sheet keyed in and sent today that was done on another day is not done today", () => {
    const row = { kind: "inspection", asset: "1", checklist: "list", counts: true };
    const sentOn = (doneOn: string) => [{ ...row, doneOn }] as SentRow[];
    const given = { bundle: bundle([due("1")]), ...nothing };
    expect(states({ ...given, sent: sentOn("2026-09-01") }, today)).toEqual(["to-do"]);
    expect(states({ ...given, sent: sentOn("2026-10-13") }, today)).toEqual(["done"]);
  });

  test("the walk stands at the first asset to do; one past its latest day is over", () => {
    const rows = [due("1"), due("2", { latest: "2026-10-12" }), due("3")];
    expect(strokesOf(roundOf({ bundle: bundle(rows), ...nothing }, today), today)).toEqual([
      "here",
      "over",
      "to-come",
    ]);
  });

  test("a window that opens within the week is announced, and is not yet due", () => {
    const round = roundOf(
      { bundle: bundle([due("1", { earliest: "2026-10-18" })]), ...nothing },
      today,
    );
    expect(round.all).toEqual([]);
    expect(round.coming.map((row) => row.asset.number)).toEqual(["1"]);
  });
});

describe("what is not simply due", () => {
  const closure = { status: "excused", from: "2026-10-05", reopens: "2027-04-01" } as const;
  const walk = (rows: readonly DueRow[]) => roundOf({ bundle: bundle(rows), ...nothing }, today);

  test("excused is neither to do nor done", () => {
    const round = walk([due("1", { closure, lastDone: "2026-04-01", latest: "2027-04-01" })]);
    expect(round.all).toEqual([]);
    expect(round.excused.map((row) => row.asset.number)).toEqual(["1"]);
  });

  test("what must not be used before it is done is on the round before its window opens", () => {
    const blocked = { ...closure, status: "blocked" as const };
    const round = walk([due("1", { closure: blocked, earliest: "2027-03-01" })]);
    expect(round.all.map((row) => row.status)).toEqual(["blocked"]);
  });

  test("what cannot be told is asked for now, and is not called over", () => {
    const rows = [due("1"), due("2", { status: "undecided", latest: "2026-01-01" })];
    const round = walk(rows);
    expect(round.all.map((row) => row.status)).toEqual(["never-done", "undecided"]);
    expect(strokesOf(round, today)).toEqual(["here", "to-come"]);
  });

  test("what waits for an event is on no round", () => {
    const none = { earliest: "9999-12-31", due: "9999-12-31", latest: "9999-12-31" };
    const round = walk([due("1", none)]);
    expect([round.all, round.coming, round.nextDay]).toEqual([[], [], null]);
  });

  test("a row stands as it does today, whatever day the site was last read on", () => {
    const row = due("1", { lastDone: "2026-04-01", latest: "2026-10-12", status: "due" });
    expect(walk([row]).all.map(({ status }) => status)).toEqual(["overdue"]);
  });
});

describe("the strokes of a long walk", () => {
  const walk = (here: number, count: number): WalkStroke[] =>
    Array.from({ length: count }, (_, at) => (at < here ? "done" : at === here ? "here" : "over"));

  test("are all drawn while they fill a few lines", () => {
    expect(walkPart(walk(7, 138))).toEqual({ from: 0, strokes: walk(7, 138) });
  });

  test("are drawn by whole lines around where the walker stands, beginning and end included", () => {
    for (const here of [0, 22, 23, 900, 1861, 1990, 1999]) {
      const { from, strokes } = walkPart(walk(here, 2_000));
      expect(from % 23, String(here)).toBe(0);
      expect(strokes.length, String(here)).toBeLessThanOrEqual(138);
      expect(strokes.indexOf("here") + from, String(here)).toBe(here);
    }
    expect(walkPart(walk(1999, 2_000)).strokes.at(-1)).toBe("here");
  });

  test("begin at the first where nobody is left to walk to", () => {
    expect(walkPart(walk(3_000, 2_000))).toMatchObject({ from: 0 });
  });
});
