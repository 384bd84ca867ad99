import type { Block } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { addGroup, addPoint } from "./commands.ts";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { canBecomeBlock, groupAsBlock, includedBlocks, setIncluded } from "./include-edit.ts";
import { wholeOf, withIncludes } from "./whole.ts";

const lead = (): DraftDocument => {
  const grouped = addGroup(addGroup(emptyDocument("Lead"), "Plug"), "Cable");
  const { document: plugged } = addPoint(grouped, "reading", "Continuity", "plug");
  const { document } = addPoint(plugged, "check", "Sheath", "cable");
  const continuity = { ...document.properties.continuity, limits: [{ max: "limit" }] };
  return {
    ...document,
    properties: { ...document.properties, continuity } as DraftDocument["properties"],
    particulars: { length: { title: "Length", order: 1, type: "number", unit: "m" } },
    values: {
      limit: { formula: "joints * length", unit: "Ohm" },
      joints: { const: 0.1, unit: "Ohm" },
      other: { const: 2 },
    },
  };
};
const made = () => {
  const result = groupAsBlock(lead(), "plug", new Set(["plug"]));
  if (!result) throw new Error("no block");
  return result;
};

test("a group becomes a block with all that its points count with, under a name not taken", () => {
  const { block } = made();
  expect(block).toMatchObject({ name: "plug_2", title: "Plug" });
  expect(Object.keys(block.points)).toEqual(["continuity"]);
  expect(Object.keys(block.values ?? {}).toSorted()).toEqual(["joints", "limit"]);
  expect(Object.keys(block.particulars ?? {})).toEqual(["length"]);
});

test("the draft it came from asks the same points in the same order as before, by the block", () => {
  const { block, document } = made();
  expect(Object.keys(document.properties)).toEqual(["sheath"]);
  const { document: whole, problems } = wholeOf(document, [block]);
  expect(problems).toEqual([]);
  expect(whole.properties.continuity).toEqual({
    ...lead().properties.continuity,
    block: "plug_2",
  });
  expect(whole.groups).toEqual(lead().groups);
  expect(whole.values).toEqual(lead().values);
});

test("a group with sayings in other languages, or without a point, becomes no block", () => {
  const worded = { ...lead(), wording: { cy: { "/title": "Lid" } } };
  expect(canBecomeBlock(worded, "plug")).toBe(false);
  expect(groupAsBlock(addGroup(lead(), "Empty"), "empty", new Set())).toBeNull();
});

test("a block that cannot be taken in is said, and the rest is shown without it", () => {
  const { block } = made();
  const twice = setIncluded(lead(), [block.name]);
  const { document, problems } = wholeOf(twice, [block]);
  expect(problems.map(({ code }) => code)).toContain("block-name-taken");
  expect(document).toEqual(lead());
  expect(wholeOf(twice, undefined)).toEqual({ document: lead(), problems: [] });
});

test("a block left out takes its points out of the draft's groups too", () => {
  const { block, document } = made();
  const left = setIncluded(document, [], [block]);
  expect(left.include).toBeUndefined();
  expect(left.groups?.flatMap(({ points }) => points)).toEqual(["sheath"]);
});

test("a point that the block gains later is asked after the others", () => {
  const { block, document } = made();
  const points = { ...block.points, more: { $ref: "#/$defs/text" as const, title: "More" } };
  const { document: whole, problems } = wholeOf(document, [{ ...block, points }]);
  expect(problems).toEqual([]);
  expect(whole.groups?.flatMap((group) => group.points)).toEqual(["continuity", "sheath", "more"]);
});

test("the draft of the next issue takes its blocks in again, as they are now", () => {
  const { block, document } = made();
  const issued = wholeOf(document, [block]).document;
  const later: Block = {
    ...block,
    values: { ...block.values, joints: { const: 0.2, unit: "Ohm" } },
  };
  const again = withIncludes(issued, [later]);
  expect(includedBlocks(again)).toEqual(["plug_2"]);
  expect(wholeOf(again, [later]).document.values?.joints).toMatchObject({ const: 0.2 });
  expect(withIncludes(issued, [])).toEqual(issued);
  expect(wholeOf(withIncludes(issued, [block]), [block]).document).toEqual(issued);
});
