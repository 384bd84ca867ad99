import { type Judgement, problem } from "@roundbook/schemas";
import { expect, it } from "vitest";
import { checklistOf, HOT, LAMPS } from "../testing/kinds.ts";
import { hindrance, lacksOf, pointOf } from "./lacking.ts";

const document = checklistOf({
  hot: HOT,
  lamps: LAMPS,
  sum: { $ref: "#/$defs/calculated", title: "Sum", calculate: "1", quantity: { unit: "mm" } },
});
const judged = (...problems: Judgement["problems"]): Judgement =>
  ({ problems }) as Partial<Judgement> as Judgement;
const answers = { hot: { value: 60, unit: "Cel", elapsed: 60 } };

it("a problem is about the answer its pointer names, with its member", () => {
  expect(pointOf(document, problem("/answers/hot", "not-an-answer"))).toBe("hot");
  expect(pointOf(document, problem("/answers/hot@left", "not-an-answer"))).toBe("hot@left");
  expect(pointOf(document, problem("/answers/cold", "unknown-point"))).toBeUndefined();
});

it.each([
  ["a mandatory point nobody answered", "hot", "mandatory-not-answered", "blocked"],
  ["an answer that cannot be used", "hot", "not-an-answer", "blocked"],
  ["missing evidence, until the person goes without", "hot", "evidence-missing", "evidence"],
  ["a sample that is awaited", "hot", "result-awaited", undefined],
  ["a reading that was read early", "hot", "read-too-early", undefined],
  ["readings of which one could not be had", "lamps", "too-few-readings", undefined],
  ["a sum that does not come out", "sum", "unit-not-convertible", undefined],
])("%s says whether the inspection may be written", (_, point, code, stop) => {
  const judgement = judged(problem(`/answers/${point}`, code));
  expect(hindrance(document, judgement, answers, false)).toBe(stop);
});

it("what does not hold finishing up is told all the same", () => {
  const judgement = judged(problem("/answers/sum", "unit-not-convertible"));
  expect(lacksOf(document, judgement).told.map(({ point }) => point)).toEqual(["sum"]);
});
