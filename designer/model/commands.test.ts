import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  addGroup,
  addPoint,
  changePoint,
  duplicatePoint,
  moveGroup,
  movePoint,
  pageOrder,
  removeGroup,
  removePoint,
} from "./commands.ts";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";

const twoGroups = (): DraftDocument => {
  let document = addGroup(addGroup(emptyDocument("Ladder"), "Look"), "Measure");
  document = addPoint(document, "check", "Feet whole", "look").document;
  document = addPoint(document, "check", "Rungs whole", "look").document;
  return addPoint(document, "reading", "Length", "measure").document;
};

describe("editing a checklist", () => {
  test("a point begins mandatory and with nothing preset", () => {
    const { document, name } = addPoint(emptyDocument("Lead"), "check", "Cable whole?", null);
    expect(name).toBe("cable_whole");
    expect(document.properties[name]).toEqual({
      $ref: "#/$defs/check",
      title: "Cable whole?",
      ask: { mandatory: true },
      limits: [{ accept: ["ok"] }],
    });
  });

  test("a name that an earlier issue used is never given to another point", () => {
    const { name } = addPoint(
      emptyDocument("Lead"),
      "check",
      "Cable",
      null,
      new Set(["cable", "cable_2"]),
    );
    expect(name).toBe("cable_3");
  });

  test("a title without letters still gets a name", () => {
    expect(addPoint(emptyDocument("Lead"), "reading", "?", null).name).toBe("reading");
  });

  test("moving past the end of a group enters the next", () => {
    const moved = movePoint(twoGroups(), "rungs_whole", 1);
    expect(pageOrder(moved)).toEqual([
      { group: "look", points: ["feet_whole"] },
      { group: "measure", points: ["rungs_whole", "length"] },
    ]);
    expect(pageOrder(movePoint(moved, "rungs_whole", -1))).toEqual(pageOrder(twoGroups()));
  });

  test("points of a removed group stay on the page, outside any group", () => {
    expect(pageOrder(removeGroup(twoGroups(), "look"))).toEqual([
      { group: null, points: ["feet_whole", "rungs_whole"] },
      { group: "measure", points: ["length"] },
    ]);
  });

  test("a group moves with its points, and not past the ends", () => {
    const moved = moveGroup(twoGroups(), "measure", -1);
    expect(pageOrder(moved).map(({ group }) => group)).toEqual(["measure", "look"]);
    expect(moveGroup(moved, "measure", -1)).toBe(moved);
  });

  test("a copy stands beside its original under a name of its own", () => {
    const { document, name } = duplicatePoint(twoGroups(), "feet_whole");
    expect(name).toBe("feet_whole_2");
    expect(pageOrder(document)[0]?.points).toEqual(["feet_whole", "feet_whole_2", "rungs_whole"]);
  });

  test("a removed point leaves its group and its scores", () => {
    const scored: DraftDocument = {
      ...twoGroups(),
      scores: {
        whole: {
          title: "Whole",
          of: ["feet_whole", "rungs_whole"],
          method: "share-of-maximum",
          round: { rule: "half-up", decimals: 0 },
          bands: [{ title: "All", from: 0 }],
        },
      },
    };
    const removed = removePoint(scored, "feet_whole");
    expect(removed.properties).not.toHaveProperty("feet_whole");
    expect(removed.scores?.whole?.of).toEqual(["rungs_whole"]);
    expect(pageOrder(removed)[0]?.points).toEqual(["rungs_whole"]);
  });

  test("changing a point that is not there changes nothing", () => {
    const document = twoGroups();
    expect(changePoint(document, "constructor", (point) => ({ ...point, title: "x" }))).toBe(
      document,
    );
  });

  test("however points are moved, none is lost or doubled", () => {
    const names = ["feet_whole", "rungs_whole", "length"];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...names), fc.constantFrom(-1 as const, 1 as const))),
        (moves) => {
          let document = twoGroups();
          for (const [name, direction] of moves) document = movePoint(document, name, direction);
          expect(
            pageOrder(document)
              .flatMap((part) => part.points)
              .sort(),
          ).toEqual([...names].sort());
        },
      ),
    );
  });
});
