import { expect, it } from "vitest";
import { repeatPattern } from "./repeat-patterns.ts";
import { allowsMember } from "./repeats.ts";

const names = [...Array(120).keys()].flatMap((number) => [`${number}`, `0${number}`]);

it("a repeat's pattern takes exactly the members that the sheet takes, whatever their number", () => {
  for (let atMost = 1; atMost <= 99; atMost += 1) {
    const repeat = { each: "Socket", count: 1, atMost };
    const pattern = new RegExp(repeatPattern("plate", repeat));
    for (const name of [...names, "", "left", "1\n", "-1"])
      expect(pattern.test(`plate@${name}`)).toBe(allowsMember(repeat, name));
    expect(pattern.test("plate")).toBe(false);
  }
});

it("a named member stands for itself alone", () => {
  const repeat = {
    each: "Leaf",
    members: [
      { id: "left", title: "L" },
      { id: "l", title: "l" },
    ],
  };
  const pattern = new RegExp(repeatPattern("gap", repeat));
  expect(
    ["left", "l", "lef", "lefty", "right", ""].filter((id) => pattern.test(`gap@${id}`)),
  ).toEqual(["left", "l"]);
});
