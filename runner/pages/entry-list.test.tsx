import type { HistoryEntry } from "@roundbook/schemas";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { EntryList } from "./entry-list.tsx";
import { readAddress } from "./life-page.tsx";

const HASH = "a".repeat(64);
const point = (verdict: string | null) => ({ verdict, asked: true, limits: [] });
const signed = {
  overall: "undecided",
  complete: false,
  pending: ["lead"],
  points: { flow: point("pass"), lead: point("undecided"), colour: point(null) },
  problems: [],
};
const came = {
  ...signed,
  overall: "fail",
  complete: true,
  pending: [],
  points: { ...signed.points, lead: point("fail") },
};
const rowOf = (kind: string, body: object, seq: number, judgement: object, more: object = {}) =>
  ({
    entry: { id: `entry-${seq}`, kind, asset: "asset", civilDate: "2026-03-02", body },
    leaf: { seq, receivedAt: "2026-03-02T10:00:00.000Z", judgement, flags: [] },
    authorName: "Dag Ruskeen",
    about: null,
    contents: {},
    ...more,
  }) as unknown as HistoryEntry;
const INSPECTION = { checklist: { id: "outlet", issue: 2, hash: HASH }, judgement: signed };
const drawn = (row: HistoryEntry) =>
  renderToStaticMarkup(
    <EntryList
      rows={[row]}
      titles={new Map([[HASH, "Outlet"]])}
      ofAsset
      onFollow={() => undefined}
    />,
  ).replace(/<[^>]*>/g, "|");

it("a verdict in a list says that the inspection is not complete and what it waits for", () => {
  const words = drawn(rowOf("inspection", INSPECTION, 30, signed));
  expect(words).toContain("Undecided");
  expect(words).toContain("not complete, result awaited");
  expect(words).toContain("3 points: 1 pass, 1 undecided, 1 not judged.");
  const whole = { ...signed, overall: "pass", complete: true, pending: [] };
  expect(drawn(rowOf("inspection", INSPECTION, 30, whole))).not.toContain("not complete");
});

it("a result that came later never hides what was known when the inspection was signed", () => {
  const received = { entries: [], judgement: came, since: 32 };
  const words = drawn(rowOf("inspection", INSPECTION, 30, signed, { received }));
  expect(words).toContain("Undecided when signed; fail since entry 32");
});

it("a result names its sample and its verdict", () => {
  const body = { of: "entry-30", point: "lead", result: { value: 25, unit: "ug/L" } };
  const words = drawn(rowOf("result-received", body, 32, came, { sample: "B-17" }));
  expect(words).toContain("Sample B-17: 25\u00a0μg/L, fail");
  expect(words).toContain("|Fail|");
});

it("an inspection says which shorter checks it stood for", () => {
  const words = drawn(
    rowOf("inspection", INSPECTION, 30, signed, { covered: ["Ladder, monthly look"] }),
  );
  expect(words).toContain("Covered also: Ladder, monthly look");
});

it.each([
  [
    "calendar-set",
    { site: "s", calendar: { weekdays: [{ weekday: 7, reason: "Sunday" }] }, reason: "Agreed" },
    "1 weekday off, 0 closures. Agreed",
  ],
  ["holidays-set", { region: "GB-ENG", year: 2027, holidays: [{}, {}] }, "GB-ENG, 2027: 2 days"],
  [
    "interval-overridden",
    { interval: "i", rule: {}, reason: "Salt air", until: "2027-03-01" },
    "Until 1\u00a0March 2027. Salt air",
  ],
  ["override-ended", { interval: "i", reason: "Moved inside" }, "Moved inside"],
  [
    "particulars-changed",
    { particulars: { length: 12, earthed: true }, reason: "New cable", modified: true },
    "length 12, earthed yes. It was modified. New cable",
  ],
  ["team-set", { team: "t", name: "Quay", members: ["a", "b"] }, "Quay, 2 people"],
  ["keeper-set", { place: "p", keeper: null }, "nobody in particular"],
  ["time-set", { person: "p", minutes: 90 }, "90 minutes a week"],
])("an entry of the kind %s says what it says", (kind, body, words) => {
  expect(drawn(rowOf(kind, body, 40, signed))).toContain(words);
});

it("an address that is not well formed is the name of nothing", () => {
  expect(readAddress("number:%E0%A4%A")).toBe("number:%E0%A4%A");
  expect(readAddress("number%3A40%2F33")).toBe("number:40/33");
});
