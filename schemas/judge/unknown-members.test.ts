import { expect, test } from "vitest";
import { judgeOf, reading } from "./testing/checklists.ts";

test("while their number is not known, only members that a repeat could have are judged", () => {
  const judge = judgeOf({
    particulars: { n: { title: "Number", type: "integer" } },
    properties: { p: reading("Ohm", [{ max: 1 }]) },
    groups: [
      { id: "g", title: "G", points: ["p"], repeat: { each: "Bay", count: "asset.n", atMost: 3 } },
    ],
  });
  const one = { value: 1, unit: "Ohm" };
  const answers = { "p@3": one, "p@banana": one, "p@4": one, "p@1": one };
  const { overall, complete, points, problems } = judge.judge({ particulars: {}, answers });
  expect([overall, complete]).toEqual(["undecided", false]);
  expect(Object.keys(points)).toEqual(["p@1", "p@3"]);
  expect(problems.map(({ pointer }) => pointer)).toEqual([
    "/answers/p@4",
    "/answers/p@banana",
    "/answers",
  ]);
});
