import { expect, it } from "vitest";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { compileAnswers } from "../validate/index.ts";
import { validateAnswers } from "./validate-answers.ts";

const compiled = compileAnswers(LEAVES_AND_SOCKETS);
const HASH = "a".repeat(64);
const ohm = (value: number) => ({ value, unit: "Ohm" });
const absent = { absent: { reason: "not-measurable" } };

it.each<readonly [string, unknown, string | null]>([
  ["hinges@left", 3, null],
  ["hinges@left", absent, null],
  ["hinges@left", 7, "answer-too-large"],
  ["hinges@left", -1, "answer-shape"],
  ["hinges@left", 2.5, "answer-shape"],
  ["hinges", 3, "unknown-member"],
  ["hinges@", 3, "unknown-member"],
  ["hinges@middle", 3, "unknown-member"],
  ["hinges@left@left", 3, "unknown-member"],
  ["hinge@left", 3, "unknown-point"],
  ["closing@left", { value: 3, unit: "s" }, "unknown-member"],
  ["loops@1", [ohm(1), ohm(2)], null],
  ["loops@12", [{ ...ohm(1), comparator: ">", elapsed: 0 }], null],
  ["loops@13", [ohm(1)], "unknown-member"],
  ["loops@01", [ohm(1)], "unknown-member"],
  ["loops@0", [ohm(1)], "unknown-member"],
  ["loops@1", [], "answer-shape"],
  ["loops@1", ohm(1), "answer-shape"],
  ["loops@1", Array.from({ length: 51 }, () => ohm(1)), "answer-shape"],
  ["plate@2", ["whole"], null],
  ["plate@2", ["whole", "marked"], null],
  ["plate@2", ["whole", "whole"], "answer-shape"],
  ["plate@2", ["whole", "bent"], "answer-not-an-option"],
  ["plate@2", "whole", "answer-shape"],
  ["opened", "2026-02-28", null],
  ["opened", "2026-02-30", "answer-no-such-day"],
  ["opened", "28.02.2026", "answer-shape"],
  ["closing", { value: 8, unit: "s", elapsed: 5 }, null],
  ["closing", { value: 8, unit: "s", elapsed: -1 }, "answer-shape"],
  ["closing", { value: 8, unit: "s", elapsed: 86_401 }, "answer-shape"],
  ["water", { sample: "B 12" }, null],
  ["water", { sample: "B 12", takenAt: "2026-03-01T09:00:00Z", result: ohm(1) }, null],
  ["water", { sample: "" }, "answer-shape"],
  ["water", { result: ohm(1) }, "answer-shape"],
  ["water", { sample: "B 12", takenAt: "yesterday" }, "answer-shape"],
  ["sum", { value: 16, unit: "s" }, "never-answered"],
  ["sum", absent, "never-answered"],
  ["signed", { signedBy: "M. Tolvane", drawing: HASH }, null],
  ["signed", { signedBy: { commit: HASH } }, null],
  ["signed", "M. Tolvane", "answer-shape"],
  ["signed", { drawing: HASH }, "answer-shape"],
])("%s: %j is told as %s, and compiled alike", (name, answer, code) => {
  const problems = validateAnswers(LEAVES_AND_SOCKETS, { [name]: answer });
  expect(problems.map((found) => found.code)).toEqual(code === null ? [] : [code]);
  expect(compiled({ [name]: answer }).map(({ pointer }) => pointer)).toEqual(
    problems.map(({ pointer }) => pointer),
  );
});
