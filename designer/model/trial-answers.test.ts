import type { Filled } from "@roundbook/runner/form";
import { expect, test } from "vitest";
import { changeKind } from "./change-kind.ts";
import {
  addGroup,
  addPoint,
  changePoint,
  moveGroup,
  movePoint,
  removeGroup,
  removePoint,
} from "./commands.ts";
import { emptyDocument, optionsOf, withOptions } from "./draft-document.ts";
import { setRepeat } from "./repeat-edit.ts";
import { fittingAnswers, NOTHING_TRIED, withAnswers } from "./trial-answers.ts";

const begun = addGroup(addGroup(emptyDocument("Chair"), "Legs"), "Back");
const withCheck = addPoint(begun, "check", "Firm", "legs").document;
const chair = addPoint(withCheck, "choice", "Seat", "back").document;
const written: Filled = {
  answers: { firm: "not-ok", seat: "worn" },
  evidence: { firm: [{ kind: "photo", sha256: "a".repeat(64) }] },
  declared: [],
  waits: {},
};
const kept = withAnswers(chair, NOTHING_TRIED, written);

test.each([
  ["a point is added", addPoint(chair, "text", "Marks", "legs").document],
  ["a point is moved", movePoint(chair, "firm", 1)],
  ["a group is added", addGroup(chair, "Arms")],
  ["a group is moved", moveGroup(chair, "legs", 1)],
  ["a group goes", removeGroup(chair, "legs")],
])("answers stay when %s", (_, document) => {
  expect(fittingAnswers(document, kept)).toEqual(written);
});

test("of a point that goes only its own answer goes, and comes back with it", () => {
  const without = removePoint(chair, "firm");
  const left = fittingAnswers(without, kept);
  expect(left).toEqual({ ...written, answers: { seat: "worn" }, evidence: {} });
  const later = withAnswers(without, kept, { ...left, answers: { seat: "good" } });
  expect(fittingAnswers(chair, later)).toEqual({
    ...written,
    answers: { firm: "not-ok", seat: "good" },
  });
});

test("an answer that was taken back stays taken back", () => {
  const cleared = withAnswers(chair, kept, { ...written, answers: { firm: "not-ok" } });
  expect(fittingAnswers(chair, cleared).answers).toEqual({ firm: "not-ok" });
});

test("an answer to another kind of question is none", () => {
  const counted = changeKind(chair, "firm", "text").document;
  expect(fittingAnswers(counted, kept).answers).toEqual({ seat: "worn" });
  const now = { ...written, answers: { firm: "ok", seat: "worn" } };
  const anew = withAnswers(counted, kept, now);
  expect(fittingAnswers(counted, anew).answers).toEqual({ firm: "ok", seat: "worn" });
  expect(fittingAnswers(chair, anew).answers).toEqual({ seat: "worn" });
});

test("a choice that is offered no more, and a member nobody asks for, are none", () => {
  const fewer = changePoint(chair, "seat", (point) =>
    withOptions(
      point,
      optionsOf(point).filter((option) => option.const !== "worn"),
    ),
  );
  expect(fittingAnswers(fewer, kept).answers).toEqual({ firm: "not-ok" });
  const each = setRepeat(chair, "legs", { each: "Leg", count: 4 });
  expect(fittingAnswers(each, kept).answers).toEqual({ seat: "worn" });
});
