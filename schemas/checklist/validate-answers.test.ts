import fc from "fast-check";
import { expect, it } from "vitest";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { compileAnswers } from "../validate/index.ts";
import { validateAnswers } from "./validate-answers.ts";

const compiled = compileAnswers(EVERY_KIND);
const points = Object.keys(EVERY_KIND.properties);
const HASH = "a".repeat(64);

it.each([
  ["intact", "ok", true],
  ["intact", "yes", false],
  ["intact", true, false],
  ["intact", { absent: { reason: "no-access", note: "locked" } }, true],
  ["intact", { absent: { reason: "because" } }, false],
  ["closer", "floor", true],
  ["closer", "none", false],
  ["closer", { absent: { reason: "not-applicable" } }, true],
  // The options of this point leave no room for an absence.
  ["lock", { absent: { reason: "not-applicable" } }, false],
  ["finish", 5, true],
  ["finish", 6, false],
  ["finish", 2.5, false],
  ["constructor", { value: 3, unit: "mm" }, true],
  ["constructor", { value: 3, unit: "mm", comparator: ">" }, true],
  ["constructor", { value: 3 }, false],
  ["constructor", 3, false],
  ["remark", "Fünf!", true],
  ["remark", "sechs!", false],
  ["remark", "🚪🚪🚪🚪🚪", true],
  ["remark", { commit: HASH }, true],
  ["picture", [HASH], true],
  ["picture", [], false],
  ["unknown", "ok", false],
])("%s: %j is well-formed: %s, interpreted and compiled", (point, answer, valid) => {
  const answers = { [point]: answer };
  expect(validateAnswers(EVERY_KIND, answers).length === 0).toBe(valid);
  expect(compiled(answers).length === 0).toBe(valid);
});

const scalar = fc.oneof(
  fc.constantFrom("ok", "not-ok", "overhead", "yes", "", HASH, "mm", ">", "not-applicable"),
  fc.integer({ min: -1, max: 7 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.boolean(),
  fc.constant(null),
  fc.string({ maxLength: 8, unit: "binary" }),
);
const key = fc.constantFrom(
  "value",
  "unit",
  "comparator",
  "absent",
  "reason",
  "note",
  "commit",
  "x",
);
const answer = fc.letrec((tie) => ({
  any: fc.oneof(
    { depthSize: "small" },
    scalar,
    fc.constant({ value: 3, unit: "mm" }),
    fc.constant({ absent: { reason: "not-applicable" } }),
    fc.array(scalar, { maxLength: 3 }),
    fc.dictionary(key, tie("any"), { maxKeys: 3 }),
  ),
})).any;

it("interpreting and compiling find the same ill-formed answers", () => {
  const names = fc.constantFrom(...points, "unknown", "toString");
  fc.assert(
    fc.property(fc.dictionary(names, answer, { maxKeys: 6 }), (answers) => {
      const pointers = (problems: readonly { pointer: string }[]) =>
        problems.map(({ pointer }) => pointer).sort();
      expect(pointers(validateAnswers(EVERY_KIND, answers))).toEqual(pointers(compiled(answers)));
    }),
    { numRuns: 5000 },
  );
});

it.each([null, [], "ok", 3])("answers that are no object are refused: %j", (answers) => {
  expect(validateAnswers(EVERY_KIND, answers)).toEqual(compiled(answers));
  expect(validateAnswers(EVERY_KIND, answers)).toHaveLength(1);
});

it.each(["__proto__", "constructor@1", "toString", "intact@__proto__"])(
  "an own key named %s is an answer to no question",
  (name) => {
    const answers: unknown = JSON.parse(`{${JSON.stringify(name)}: {"value": 1}}`);
    expect(validateAnswers(EVERY_KIND, answers)).toHaveLength(1);
    expect(compiled(answers)).toHaveLength(1);
    expect(Object.hasOwn(Object.prototype, "value")).toBe(false);
  },
);
