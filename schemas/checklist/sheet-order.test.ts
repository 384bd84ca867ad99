import { expect, it } from "vitest";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { pointsInOrder } from "./points-in-order.ts";
import { sheetOrder } from "./sheet-order.ts";

const leaves = {
  members: [
    { id: "left", title: "Left leaf" },
    { id: "right", title: "Right leaf" },
  ],
};
const names = (members: Parameters<typeof sheetOrder>[1]) =>
  sheetOrder(LEAVES_AND_SOCKETS, members).map(({ group, member, points }) => [
    group?.id ?? null,
    member?.id ?? null,
    points.map(({ name }) => name),
  ]);

it("a repeat is asked once for each of its members, the points of a member together", () => {
  expect(names({ leaves, outlets: { members: [{ id: "1", title: "1" }] } })).toEqual([
    [null, null, ["label", "water"]],
    ["leaves", "left", ["gap_top@left", "hinges@left"]],
    ["leaves", "right", ["gap_top@right", "hinges@right"]],
    ["outlets", "1", ["loops@1", "plate@1"]],
    ["whole", null, ["opened", "closing", "sum", "signed"]],
  ]);
});

it("a repeat whose members are not known asks nothing; its name inherited from objects is not known", () => {
  expect(names({}).map(([group]) => group)).toEqual([null, "whole"]);
  const groups = [{ ...(LEAVES_AND_SOCKETS.groups?.[0] ?? fail()), id: "constructor" }];
  expect(sheetOrder({ ...LEAVES_AND_SOCKETS, groups }, {}).map(({ group }) => group)).toEqual([
    null,
  ]);
});

it("a member says what one of its kind is called, and a point which answer is its own", () => {
  const [, left] = sheetOrder(LEAVES_AND_SOCKETS, { leaves });
  expect(left?.member).toEqual({ id: "left", title: "Left leaf", each: "Leaf" });
  expect(left?.points[0]).toEqual({ name: "gap_top@left", point: "gap_top" });
});

it("a checklist without repeats is asked in the order of its points", () => {
  expect(
    sheetOrder(EVERY_KIND, {}).flatMap(({ points }) => points.map(({ name }) => name)),
  ).toEqual(pointsInOrder(EVERY_KIND).flatMap(({ points }) => points));
});

function fail(): never {
  throw new Error("the fixture has no groups");
}
