import { expect, test } from "vitest";
import { canonicalize } from "../log/canonical.ts";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { issueDocument } from "./issue-document.ts";
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
  for (const doc of [EXTENSION_LEAD, EVERY_KIND]) {
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
