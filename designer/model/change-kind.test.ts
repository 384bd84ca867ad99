import { expect, test } from "vitest";
import { changeKind } from "./change-kind.ts";
import { addGroup, addPoint, changePoint, pageOrder } from "./commands.ts";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { addScore } from "./score-edit.ts";

const lead = (): DraftDocument => {
  let document = addGroup(emptyDocument("Lead"), "Look");
  document = addPoint(document, "check", "Cable whole?", "look").document;
  document = addPoint(document, "graded", "Cleanliness", "look").document;
  return changePoint(document, "cable_whole", (one) => ({
    ...one,
    ask: { ...one.ask, when: "asset.length > 5", evidence: [{ kind: "photo", on: ["fail"] }] },
  }));
};

test("a point of another kind keeps its question and when it is asked, and loses its limits", () => {
  const { document, name } = changeKind(lead(), "cable_whole", "reading");
  expect(name).toBe("cable_whole");
  expect(document.properties[name]).toEqual({
    $ref: "#/$defs/reading",
    title: "Cable whole?",
    ask: { mandatory: true, when: "asset.length > 5" },
    quantity: { unit: "Cel", decimals: 1 },
  });
});

test("an issued point of another kind is another point, at the same place", () => {
  const retired = new Set(["cable_whole"]);
  const { document, name } = changeKind(lead(), "cable_whole", "text", retired);
  expect(name).toBe("cable_whole_2");
  expect(pageOrder(document)).toEqual([{ group: "look", points: [name, "cleanliness"] }]);
  expect(Object.keys(document.properties)).toEqual([name, "cleanliness"]);
});

test("a point that is no grade any more leaves the scores", () => {
  const scored = addScore(lead(), "Condition");
  const { document } = changeKind(scored, "cleanliness", "check");
  expect(Object.values(document.scores ?? {})[0]?.of).toEqual([]);
});

test("the kind it has already is no change", () => {
  const document = lead();
  expect(changeKind(document, "cleanliness", "graded").document).toBe(document);
});
