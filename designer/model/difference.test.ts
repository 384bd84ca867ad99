import { canonicalize, issueDocument } from "@roundbook/schemas";
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  addGroup,
  addPoint,
  changeGroup,
  changePoint,
  moveGroup,
  movePoint,
  removeGroup,
  removePoint,
} from "./commands.ts";
import { differences } from "./difference.ts";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";

const door = (): DraftDocument => {
  const begun = addGroup(emptyDocument("Fire door"), "Gaps");
  const gap = addPoint(begun, "reading", "Gap at the head", "gaps").document;
  const closes = addPoint(gap, "check", "Closes fully?", "gaps").document;
  return changePoint(closes, "gap_at_the_head", (point) => ({
    ...point,
    quantity: { unit: "mm", decimals: 1 },
    limits: [{ min: 2, max: 4, basis: "BS 8214 as commonly quoted" }],
  }));
};

test("nothing changed is no change", () => {
  expect(differences(door(), door())).toEqual([]);
});

test("a limit says how it was and how it is", () => {
  const tighter = changePoint(door(), "gap_at_the_head", (point) => ({
    ...point,
    limits: [{ min: 2, max: 3, basis: "the door's own papers" }],
  }));
  expect(differences(door(), tighter)).toEqual([
    {
      kind: "limits",
      about: "Gap at the head",
      point: "gap_at_the_head",
      was: "Fails below 2\u00a0mm or above 4\u00a0mm. Because: BS 8214 as commonly quoted.",
      is: "Fails below 2\u00a0mm or above 3\u00a0mm. Because: the door's own papers.",
    },
  ]);
});

test("how a point is asked is told in words, only what differs", () => {
  const changed = changePoint(door(), "closes_fully", (point) => ({
    ...point,
    ask: { mandatory: false, evidence: [{ kind: "photo", on: ["fail"] }] },
    grade: { means: "by-a-date", within: "P14D" },
  }));
  expect(differences(door(), changed)).toEqual([
    {
      kind: "ask",
      about: "Closes fully?",
      point: "closes_fully",
      was: "must be answered",
      is: "may be left out; asks for a photo on a fail",
    },
    {
      kind: "grade",
      about: "Closes fully?",
      point: "closes_fully",
      is: "a fail is to be put right within 14 days",
    },
  ]);
});

test("of a named value only what differs is told", () => {
  const most = (amount: number): DraftDocument => ({
    ...door(),
    values: { most: { title: "Widest gap", const: amount, unit: "mm", basis: "BS 8214" } },
  });
  expect(differences(most(4), most(3))).toEqual([
    { kind: "value", about: "Widest gap", was: "4\u00a0mm", is: "3\u00a0mm" },
  ]);
  expect(differences(door(), most(4))).toEqual([
    { kind: "value", about: "Widest gap", is: "Widest gap; 4\u00a0mm; because: BS 8214" },
  ]);
});

test("points that come and go are named", () => {
  const changed = addPoint(
    removePoint(door(), "closes_fully"),
    "photo",
    "Picture",
    "gaps",
  ).document;
  expect(differences(door(), changed).map(({ kind, about }) => [kind, about])).toEqual([
    ["gone", "Closes fully?"],
    ["added", "Picture"],
  ]);
});

test("whatever member is changed, some change is told", () => {
  const members: ((document: DraftDocument) => DraftDocument)[] = [
    (document) => ({ ...document, title: "Door" }),
    (document) => ({ ...document, cautions: ["Do not wedge."] }),
    (document) => ({ ...document, minutes: 5 }),
    (document) => ({ ...document, description: "Quarterly." }),
    (document) => ({ ...document, values: { most: { const: 4, unit: "mm" } } }),
    (document) => ({ ...document, particulars: { rating: { title: "Rating" } } }),
    (document) => ({ ...document, groups: [] }),
    (document) =>
      changePoint(document, "closes_fully", (point) => ({ ...point, ask: { mandatory: false } })),
    (document) =>
      changePoint(document, "closes_fully", (point) => ({
        ...point,
        grade: { means: "danger-now" },
      })),
    (document) => ({
      ...document,
      groups: document.groups?.map((one) => ({ ...one, groupAnswer: true })),
    }),
  ];
  fc.assert(
    fc.property(fc.subarray(members, { minLength: 1 }), (chosen) => {
      const after = chosen.reduce((document, change) => change(document), door());
      expect(canonicalize(after)).not.toBe(canonicalize(door()));
      expect(differences(door(), after)).not.toEqual([]);
    }),
  );
});

test("a repeat, a rule that stops, and clauses of limits are told in words", () => {
  const group = { id: "leaf", title: "Leaves", points: ["gap"] };
  const gap = { $ref: "#/$defs/reading", title: "Gap", quantity: { unit: "mm" } } as const;
  const was: DraftDocument = {
    ...emptyDocument("Door"),
    groups: [group],
    properties: { gap: { ...gap, limits: [{ max: 4 }] } },
  };
  const is: DraftDocument = {
    ...was,
    groups: [{ ...group, repeat: { each: "Leaf", count: 2 } }],
    properties: {
      gap: {
        ...gap,
        limits: [{ max: 4, decision: { rule: "guarded-acceptance", uncertainty: 0.1 } }],
      },
    },
    stops: [{ after: ["gap"], on: ["fail"], groups: ["leaf"], say: "Keep it shut" }],
  };
  expect(differences(was, is)).toEqual([
    {
      kind: "limits",
      about: "Gap",
      point: "gap",
      was: "Fails above 4\u00a0mm.",
      is: "Fails above 4\u00a0mm, passing only where no doubt is left by an uncertainty of 0.1\u00a0mm, guard band 1 ×.",
    },
    {
      kind: "stops",
      about: "Door",
      is: "after a fail of Gap it does not ask Leaves: Keep it shut",
    },
    { kind: "repeat", about: "Leaves", was: "asked once", is: "asked for each Leaf: 2" },
  ]);
});

test("what is no order is not told as one", () => {
  const begun = addGroup(door(), "Leaf");
  const kinds = (after: DraftDocument) => differences(begun, after).map(({ kind }) => kind);
  expect(kinds({ ...begun, minutes: 9 })).toEqual(["minutes"]);
  expect(kinds({ ...begun, language: "cy" })).toEqual(["language"]);
  expect(kinds({ ...begun, wording: { cy: {} } })).toEqual(["languages"]);
  expect(kinds(changeGroup(begun, "leaf", { title: "Leaves" }))).toEqual(["group"]);
  expect(kinds(changeGroup(begun, "leaf", { groupAnswer: true }))).toEqual(["group-answer"]);
  expect(kinds(moveGroup(begun, "leaf", -1))).toEqual(["group-order"]);
  expect(kinds(removeGroup(begun, "leaf"))).toEqual(["group-gone"]);
});

test("a point that enters the next group is told, though it is asked in the same place", () => {
  const begun = addGroup(door(), "Leaf");
  expect(differences(begun, movePoint(begun, "closes_fully", 1))).toEqual([
    {
      kind: "order",
      about: "Fire door",
      was: "Gaps: Gap at the head, Closes fully?; Leaf: no point",
      is: "Gaps: Gap at the head; Leaf: Closes fully?",
    },
  ]);
});

test("another order of particulars is a change to issue", () => {
  const needs = (first: number, second: number): DraftDocument => ({
    ...door(),
    particulars: {
      rating: { title: "Rating", order: first },
      width: { title: "Width", order: second },
    },
  });
  expect(differences(needs(1, 2), needs(2, 1))).toEqual([
    { kind: "particular-order", about: "Fire door", was: "Rating, Width", is: "Width, Rating" },
  ]);
  expect(differences(needs(1, 2), needs(3, 7))).toEqual([]);
});

test("in another language only what is said otherwise is told, wherever it stands now", () => {
  const list = (first: string, second: string, cy: Record<string, string>): DraftDocument => ({
    ...addGroup(addGroup(emptyDocument("Door"), first), second),
    wording: { cy },
  });
  const was = list("Gaps", "Leaf", { "/groups/0/title": "Bylchau", "/groups/1/title": "Dalen" });
  const is = list("Leaf", "Gaps", { "/groups/0/title": "Drws", "/groups/1/title": "Bylchau" });
  expect(differences(was, is)).toEqual([
    { kind: "group-order", about: "Door", was: "Gaps, Leaf", is: "Leaf, Gaps" },
    { kind: "languages", about: "Welsh: Leaf", was: "Dalen", is: "Drws" },
  ]);
});

test("answers written down otherwise than when it was issued are told", () => {
  const before = issueDocument(door());
  const old = { ...before, $defs: { ...before.$defs, check: { type: "string" } } };
  expect(differences(old, door()).map(({ kind }) => kind)).toEqual(["written"]);
  const renamed = { ...door(), title: "Door" };
  expect(differences(old, renamed).map(({ kind }) => kind)).toEqual(["title", "written"]);
});
