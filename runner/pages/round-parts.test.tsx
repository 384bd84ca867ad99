import type { AssetRow, DueRow, SiteBundle } from "@roundbook/schemas";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { dayOf, standingOn } from "./due-of.tsx";
import type { RoundRow } from "./round-model.ts";
import { Excused } from "./round-parts.tsx";
import { RoundRowView } from "./round-row.tsx";

const today = dayOf("2026-10-13");
const asset = { id: "a", number: "4012", description: "Ladder", status: "in-service" } as AssetRow;
const due = {
  asset: "a",
  assetType: "ladder",
  interval: "i",
  intervalTitle: "Ladder, yearly",
  checklist: "list",
  earliest: "2026-10-01",
  due: "2026-10-05",
  latest: "2027-04-01",
  lastDone: "2025-10-05",
  status: "due",
  why: { code: "from-last-done", params: {} },
} as unknown as DueRow;
const rowOf = (more: Partial<DueRow>): RoundRow => {
  const row = { ...due, ...more };
  return { key: "k", asset, due: row, state: "to-do", status: standingOn(row, today) };
};
const bundle = {
  checklists: [],
  defects: [],
  lastResults: [],
  assetTypes: [{ assetType: "ladder", particulars: { wind: { title: "Environment" } } }],
} as unknown as SiteBundle;
const drawn = (more: Partial<DueRow>) =>
  renderToStaticMarkup(
    <RoundRowView row={rowOf(more)} {...{ bundle, today }} onFollow={() => undefined} />,
  );
const closure = { from: "2026-10-05", reopens: "2027-04-01" };

it("what is excused is folded, with its day of reopening and why", () => {
  const moved = [{ code: "excused-while-closed", params: { reason: "Winter" } }];
  const rows = [rowOf({ closure: { ...closure, status: "excused" }, why: { ...due.why, moved } })];
  const page = renderToStaticMarkup(<Excused {...{ rows, today }} />).replaceAll("\u00a0", " ");
  expect(page).toContain("1 excused");
  expect(page).toContain("Closed until 1 April 2027: Winter");
  expect(page).not.toContain("4012");
});

it("what must not be used before it is done says so in words", () => {
  const page = drawn({ closure: { ...closure, status: "blocked" } });
  expect(page).toContain("before use");
  expect(page).toContain("Not to be used before it is done");
});

it("what cannot be told says what it lacks, by its title, and is not called over", () => {
  const page = drawn({
    status: "undecided",
    latest: "2026-01-01",
    why: { code: "needs-particulars", params: { names: ["wind"] } },
  });
  expect(page).toContain("undecided");
  expect(page).toContain("needs its environment");
  expect(page).not.toContain("over");
});

it("what nobody ever did is said to be so", () => {
  expect(drawn({ lastDone: null })).toContain("never done");
  expect(drawn({})).not.toContain("never done");
});
