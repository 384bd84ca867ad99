import { expect, test } from "vitest";
import { addPoint } from "./commands.ts";
import { emptyDocument } from "./draft-document.ts";
import {
  addBand,
  addScore,
  changeBand,
  readNext,
  readWeights,
  removeBand,
  removeScore,
  setWeights,
  withoutScored,
} from "./score-edit.ts";

const scored = () => {
  const first = addPoint(emptyDocument("Building"), "graded", "Roof", null).document;
  return addScore(addPoint(first, "graded", "Stairs", null).document, "Condition");
};
const score = () => {
  const made = scored().scores?.score;
  if (!made) throw new Error("no score");
  return made;
};

test("a score begins over every graded point", () => {
  expect(score().of).toEqual(["roof", "stairs"]);
});

test("bands run from the highest down, whatever is typed", () => {
  const added = addBand(score(), "Best");
  expect(added.bands.map(({ from }) => from)).toEqual([61, 60, 0]);
  const moved = changeBand(added, 2, (band) => ({ ...band, from: 80 }));
  expect(moved.bands.map(({ title }) => title)).toEqual(["Poor", "Best", "Good"]);
});

test("the last band stays", () => {
  const one = removeBand(score(), 0);
  expect(one.bands).toHaveLength(1);
  expect(removeBand(one, 0)).toBe(one);
});

test("without a score the document has no member for it", () => {
  expect(removeScore(scored(), "score")).not.toHaveProperty("scores");
});

test("the next check is read from words, and nothing is guessed", () => {
  expect(readNext("3 years")).toBe("P3Y");
  expect(readNext("1 month")).toBe("P1M");
  expect(readNext(" At once ")).toBe("at-once");
  expect(readNext("soon")).toBeUndefined();
  expect(readNext("0 days")).toBeUndefined();
});

test("weights are read by title, and what counts once needs no word", () => {
  const titles = new Map([
    ["frame", "Frame"],
    ["glass", "Glass"],
  ]);
  expect(readWeights("2 × Frame\n1 x Glass\n", titles)).toEqual({
    weights: { frame: 2, glass: 1 },
  });
  expect(readWeights("0 × Frame", titles)).toEqual({ wrong: "0 × Frame" });
  expect(readWeights("2 × Door", titles)).toEqual({ wrong: "2 × Door" });
  const [score] = Object.values(addScore(emptyDocument("Door"), "Condition").scores ?? {});
  if (!score) throw new Error("the score under test");
  const counted = { ...score, of: ["frame", "glass"] };
  const weighed = setWeights(counted, { frame: 2, glass: 1, hinge: 3 });
  expect(weighed.weights).toEqual({ frame: 2 });
  expect(withoutScored(weighed, "frame")).not.toHaveProperty("weights");
});
