import type { Checklist } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { type Repeats, sectionsOf } from "./sections.ts";

const point = (title: string) => ({ $ref: "#/$defs/check", title });
const DOOR = {
  properties: {
    label: point("Label"),
    hinge: point("Hinges"),
    gap: point("Gap"),
    end: point("End"),
  },
  groups: [
    {
      id: "leaves",
      title: "Leaves",
      points: ["hinge", "gap"],
      repeat: {
        each: "Leaf",
        members: [
          { id: "left", title: "Left leaf" },
          { id: "right", title: "Right leaf" },
        ],
      },
    },
    { id: "whole", title: "The whole door", points: ["end"] },
  ],
} as unknown as Checklist;

const numbered = (members: readonly { id: string; title: string }[]) =>
  sectionsOf(DOOR, "Points", {
    leaves: { expected: members.length, members, why: null },
  } satisfies Repeats).map(({ number, title, points }) => [
    number,
    title,
    points.map((one) => one.number),
  ]);

test("members of a repeat are parts of one group: what follows keeps its number", () => {
  const left = { id: "left", title: "Left leaf" };
  const right = { id: "right", title: "Right leaf" };
  expect(numbered([left, right])).toEqual([
    ["1", "Points", ["1.1"]],
    ["2", "Left leaf", ["2.1", "2.2"]],
    ["2", "Right leaf", ["2.1", "2.2"]],
    ["3", "The whole door", ["3.1"]],
  ]);
  expect(numbered([left]).at(-1)?.[0]).toBe("3");
  expect(numbered([]).at(-1)?.[0]).toBe("3");
});
