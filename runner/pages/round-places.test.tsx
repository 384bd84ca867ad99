import type { AssetRow, DueRow, SiteBundle } from "@roundbook/schemas";
import { createRoot } from "react-dom/client";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, it, vi } from "vitest";
import { dayOf } from "./due-of.tsx";
import type { RoundPlace, RoundRow, RoundState } from "./round-model.ts";
import { PlacesOfRound } from "./round-parts.tsx";

const today = dayOf("2026-10-13");
const bundle = {
  checklists: [],
  defects: [],
  lastResults: [],
  assetTypes: [],
} as unknown as SiteBundle;

const rowOf = (number: number, state: RoundState = "to-do"): RoundRow => ({
  key: `k${number}`,
  asset: {
    id: `a${number}`,
    number: String(number),
    description: `Ladder ${number}`,
    status: "in-service",
  } as AssetRow,
  due: {
    asset: `a${number}`,
    checklist: "list",
    intervalTitle: "Yearly",
    earliest: "2026-10-01",
    due: "2026-10-05",
    latest: "2027-04-01",
    lastDone: null,
    status: "due",
    why: { code: "from-last-done", params: {} },
  } as unknown as DueRow,
  state,
  status: "due",
});

const placeOf = (name: string, from: number, count: number): RoundPlace => ({
  place: name,
  name,
  rows: Array.from({ length: count }, (_, at) => rowOf(from + at, at === 3 ? "done" : "to-do")),
});
const places = [placeOf("Hall", 1, 40), placeOf("Quay", 41, 1), placeOf("Loft", 42, 30)];
const list = <PlacesOfRound {...{ places, bundle, today }} />;

const named = (page: Element): string[] =>
  [...page.querySelectorAll(".stretch .row-name")].map(({ textContent }) =>
    (textContent ?? "").replaceAll("\u00a0", " "),
  );
const leftOf = places.flatMap(({ rows }) =>
  rows.filter(({ state }) => state !== "done").map(({ asset }) => asset.description),
);

it("a long round begins with a screen of rows under the headings of all its places", () => {
  const page = document.createElement("div");
  page.innerHTML = renderToStaticMarkup(list);
  expect(named(page)).toEqual(leftOf.slice(0, 12));
  expect([...page.querySelectorAll("h2")].map(({ textContent }) => textContent)).toEqual([
    "Hall",
    "Quay",
    "Loft",
  ]);
});

it("every row of a long round is there in the end, in walking order and once", async () => {
  const page = document.createElement("div");
  document.body.append(page);
  const root = createRoot(page);
  root.render(list);
  await vi.waitFor(() => expect(named(page)).toEqual(leftOf));
  expect(page.querySelectorAll(".stretch-to-come")).toHaveLength(0);
  root.unmount();
  page.remove();
});
