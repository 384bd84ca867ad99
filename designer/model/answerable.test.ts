import { expect, test } from "vitest";
import { answerable } from "./answerable.ts";
import { addGroup, addPoint } from "./commands.ts";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { setRepeat } from "./repeat-edit.ts";

const doors = (): DraftDocument => {
  const begun = addPoint(addGroup(emptyDocument("Door"), "Leaf"), "reading", "Gap", "leaf");
  return addPoint(begun.document, "photo", "Picture", "leaf").document;
};

test("a repeated point is answered for each member, and a photo by no cell", () => {
  const each = { each: "Leaf", members: [{ id: "left", title: "Left leaf" }] };
  const names = (document: DraftDocument) =>
    answerable(document).map(({ name, title }) => [name, title]);
  expect(names(doors())).toEqual([["gap", "Gap"]]);
  expect(names(setRepeat(doors(), "leaf", each))).toEqual([["gap@left", "Gap, Left leaf"]]);
  expect(names(setRepeat(doors(), "leaf", { each: "Leaf", count: 2 }))).toEqual([
    ["gap@1", "Gap, Leaf 1"],
    ["gap@2", "Gap, Leaf 2"],
  ]);
});
