import { expect, test } from "vitest";
import { addGroup, changeGroup } from "./commands.ts";
import { emptyDocument } from "./draft-document.ts";
import { membersFrom, repeatHow, repeatOf, setRepeat } from "./repeat-edit.ts";

const FIRST = { each: "Leaf", members: ["Left", "Right"] };

test("members keep their id while their title stands", () => {
  const first = membersFrom(["Left", "Right"]);
  expect(first).toEqual([
    { id: "left", title: "Left" },
    { id: "right", title: "Right" },
  ]);
  expect(membersFrom(["Right", "Middle"], first)).toEqual([
    { id: "right", title: "Right" },
    { id: "middle", title: "Middle" },
  ]);
});

test("a member never gets the id of one that was there a moment ago", () => {
  expect(membersFrom(["left"], [{ id: "left", title: "Left" }])).toEqual([
    { id: "left_2", title: "left" },
  ]);
});

test("what one is called stays when its counting changes", () => {
  const named = repeatOf("named", { each: "Door", count: 4 }, FIRST);
  expect([repeatHow(named), named.each]).toEqual(["named", "Door"]);
  expect(repeatOf("numbered", named, FIRST)).toEqual({ each: "Door", count: 2 });
});

test("a group that repeats is not answered as a group", () => {
  const answered = changeGroup(addGroup(emptyDocument("Doors"), "Leaves"), "leaves", {
    groupAnswer: true,
  });
  const repeated = setRepeat(answered, "leaves", { each: "Leaf", count: 2 });
  expect(repeated.groups).toEqual([
    { id: "leaves", title: "Leaves", points: [], repeat: { each: "Leaf", count: 2 } },
  ]);
  expect(setRepeat(repeated, "leaves", undefined).groups?.[0]).not.toHaveProperty("repeat");
});
