import { expect, test } from "vitest";
import { canonicalize } from "../log/canonical.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { issueDocument } from "./issue-document.ts";
import { lintChecklist } from "./lint-checklist.ts";
import type { Checklist } from "./meta-schema.ts";
import { particularsInOrder } from "./particulars-in-order.ts";
import { pointsInOrder } from "./points-in-order.ts";

const stored = (doc: Checklist): Checklist => JSON.parse(canonicalize(issueDocument(doc)));
const asked = (doc: Checklist) => pointsInOrder(doc).flatMap(({ points }) => points);

test("points are asked in the manager's order after the canonical form has sorted their names", () => {
  const doc: Checklist = {
    ...EVERY_KIND,
    groups: [],
    properties: Object.fromEntries(Object.entries(EVERY_KIND.properties).reverse()),
  };
  expect(asked(stored(doc))).toEqual(asked(doc));
  expect(asked(stored(doc))).not.toEqual([...asked(doc)].sort());
});

test("particulars are listed in the manager's order after the canonical form has sorted them", () => {
  const names = Object.keys(EXTENSION_LEAD.particulars ?? {});
  expect(names).not.toEqual([...names].sort());
  const kept = particularsInOrder(stored(EXTENSION_LEAD).particulars ?? {});
  expect(kept.map(([name]) => name)).toEqual(names);
});

test("issuing an issued document changes nothing", () => {
  for (const doc of [EXTENSION_LEAD, EVERY_KIND, LEAVES_AND_SOCKETS]) {
    const once = stored(doc);
    expect(canonicalize(issueDocument(once))).toBe(canonicalize(once));
  }
});

test("a group that has the loose points' name is not mixed up with them", () => {
  const [first = "", ...rest] = Object.keys(EVERY_KIND.properties);
  const doc = { ...EVERY_KIND, groups: [{ id: "points", title: "Given", points: rest }] };
  expect(issueDocument(doc).groups?.map(({ id, points }) => [id, points])).toEqual([
    ["points_2", [first]],
    ["points", rest],
  ]);
});

test("groups and members stay in the manager's order", () => {
  const issued = stored(LEAVES_AND_SOCKETS);
  expect(issued.groups?.map(({ id }) => id)).toEqual(["points", "leaves", "outlets", "whole"]);
  expect(issued.groups?.[1]?.repeat).toEqual(LEAVES_AND_SOCKETS.groups?.[0]?.repeat);
});

test("wording stays with its text when the loose points become the first group, worded as the title", () => {
  const { wording, groups } = stored(LEAVES_AND_SOCKETS);
  expect(groups?.[1]?.title).toBe("Leaves");
  expect(wording?.cy).toEqual({
    "/title": "Drws a socedi",
    "/groups/0/title": "Drws a socedi",
    "/groups/1/title": "Dalennau",
    "/groups/1/repeat/each": "Dalen",
    "/groups/1/repeat/members/0/title": "Dalen chwith",
    "/properties/gap_top/title": "Bwlch ar y brig",
    "/properties/plate/items/oneOf/0/title": "Cyfan",
    "/stops/0/say": "Peidiwch â siglo dalen rydd.",
  });
});

test("an issued document holds the answer types it uses and no other", () => {
  expect(Object.keys(stored(EXTENSION_LEAD).$defs ?? {}).sort()).toEqual([
    "absent",
    "check",
    "reading",
    "writtenText",
  ]);
});

test("what an earlier issue said of repeats is said anew, or not at all", () => {
  const once = stored(LEAVES_AND_SOCKETS);
  const single = { ...once, groups: [] };
  expect(issueDocument(single)).not.toHaveProperty("patternProperties");
  expect(issueDocument(single)).not.toHaveProperty("propertyNames");
  expect(once.propertyNames).toEqual({ not: { enum: ["gap_top", "hinges", "loops", "plate"] } });
  expect(Object.keys(once.patternProperties ?? {}).sort()[0]).toBe("^gap_top@(left|right)$");
});

test("a draft that still includes blocks is never issued", () => {
  expect(() => issueDocument({ ...EVERY_KIND, include: [{ block: "plug" }] })).toThrow("blocks");
  expect(lintChecklist({ ...EVERY_KIND, include: [{ block: "plug" }] })[0]).toEqual({
    pointer: "/include/0",
    code: "include-unresolved",
    params: { block: "plug" },
  });
  expect(issueDocument({ ...EVERY_KIND, include: [] })).not.toHaveProperty("include");
});
