import { expect, test } from "vitest";
import { failEvidence, withFailEvidence } from "./evidence-edit.ts";

const rules = [{ kind: "photo" as const, on: ["fail" as const, "advisory" as const], atLeast: 2 }];

test("asking for one thing more leaves what is asked for already", () => {
  expect(withFailEvidence(rules, ["photo", "note"])).toEqual([
    ...rules,
    { kind: "note", on: ["fail"], atLeast: 1 },
  ]);
});

test("what a fail asks for no more is still asked for by the other verdicts", () => {
  const left = withFailEvidence(rules, []);
  expect(left).toEqual([{ kind: "photo", on: ["advisory"], atLeast: 2 }]);
  expect(failEvidence(left)).toEqual([]);
});

test("a rule that no verdict keeps is gone", () => {
  expect(withFailEvidence([{ kind: "note", on: ["fail"], atLeast: 1 }], [])).toEqual([]);
});
