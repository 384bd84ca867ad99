import { expect, it, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { EXTENSION_LEAD } from "../testing/extension-lead.ts";
import { LEAVES_AND_SOCKETS } from "../testing/leaves-and-sockets.ts";
import { PLUG_BLOCK } from "../testing/plug-block.ts";
import { parseBlock, parseChecklist } from "../validate/index.ts";
import type { Block } from "./block-schema.ts";
import { issueDocument } from "./issue-document.ts";
import { lintChecklist } from "./lint-checklist.ts";
import type { Checklist } from "./meta-schema.ts";
import { pointIdentity } from "./point-identity.ts";
import { pointsInOrder } from "./points-in-order.ts";
import { resolveBlocks } from "./resolve-blocks.ts";

const including = (doc: Checklist, ...names: string[]): Checklist => ({
  ...doc,
  include: names.map((block) => ({ block })),
});
const resolve = (doc: Checklist, ...blocks: Block[]) =>
  resolveBlocks(
    doc,
    (name) => blocks.find((block) => block.name === name),
    blocks.map(({ name }) => name),
  );
const resolved = (doc: Checklist, ...blocks: Block[]): Checklist => {
  const result = resolve(doc, ...blocks);
  return result.ok ? result.value : expect.fail(JSON.stringify(result.problems));
};
const problems = (doc: Checklist, ...blocks: Block[]) => {
  const result = resolve(doc, ...blocks);
  return result.ok ? [] : result.problems;
};
const withPlug = resolved(including(EXTENSION_LEAD, "plug"), PLUG_BLOCK);
const named = (name: string, more: Partial<Block> = {}): Block => ({
  dialect: PLUG_BLOCK.dialect,
  name,
  title: name,
  points: { [`${name}_seen`]: { $ref: "#/$defs/check", title: "Seen?" } },
  ...more,
});

test("a resolved checklist stands alone: well formed, without a fault, ready to be issued", () => {
  expect(parseBlock(PLUG_BLOCK)).toMatchObject({ ok: true });
  expect(withPlug).not.toHaveProperty("include");
  expect(parseChecklist(withPlug)).toMatchObject({ ok: true });
  const codes = (doc: Checklist) =>
    lintChecklist(doc, createFormulaEngine()).map(({ code }) => code);
  // The block is worded in a language that the rest of the checklist is not.
  expect(codes(withPlug)).toEqual([...codes(EXTENSION_LEAD), "wording-incomplete"]);
  expect(Object.keys(issueDocument(withPlug).patternProperties ?? {})).toEqual([
    "^pin@([1-9][0-9]?)$",
  ]);
});

test("what a block brings comes behind what the checklist has, loose points under the block's title", () => {
  const doc = resolved(including(EXTENSION_LEAD, "tag", "plug"), PLUG_BLOCK, named("tag"));
  expect(pointsInOrder(doc).map(({ group, points }) => [group?.title ?? null, points])).toEqual([
    [null, ["cable", "earth_continuity"]],
    ["tag", ["tag_seen"]],
    ["Plug", ["plug_case"]],
    ["Pins", ["pin"]],
    ["Fuse", ["fuse"]],
  ]);
  expect(Object.keys(doc.particulars ?? {})).toEqual(["length", "csa", "class", "rating"]);
});

test("a point of a block that the checklist has put into a group of its own stays there", () => {
  const groups = [{ id: "looking", title: "Looking", points: ["cable", "plug_case", "fuse"] }];
  const doc = resolved(including({ ...EXTENSION_LEAD, groups }, "plug"), PLUG_BLOCK);
  expect(doc.groups?.map(({ id, points }) => [id, points])).toEqual([
    ["looking", ["cable", "plug_case", "fuse"]],
    ["pins", ["pin"]],
  ]);
  // The groups that are left out leave their wording behind as well.
  expect(doc.wording?.cy).toEqual({
    "/properties/plug_case/title": "Plwg yn gyfan?",
    "/particulars/rating/title": "Cerrynt",
    "/groups/1/title": "Pinnau",
  });
});

test("wording follows its texts into the checklist, behind what the checklist words itself", () => {
  const doc = resolved(including(LEAVES_AND_SOCKETS, "plug"), PLUG_BLOCK);
  expect(doc.wording?.cy).toEqual({
    ...LEAVES_AND_SOCKETS.wording?.cy,
    "/groups/3/title": "Plwg",
    "/groups/4/title": "Pinnau",
    "/groups/5/title": "Ffiws",
    "/properties/plug_case/title": "Plwg yn gyfan?",
    "/particulars/rating/title": "Cerrynt",
  });
  expect(doc.groups?.[4]?.title).toBe("Pins");
  const own = { cy: { "/properties/plug_case/title": "Plwg iawn?" } };
  const reworded = resolved(including({ ...EXTENSION_LEAD, wording: own }, "plug"), PLUG_BLOCK);
  expect(reworded.wording?.cy?.["/properties/plug_case/title"]).toBe("Plwg iawn?");
});

test("a definition in the same words is shared, whatever its place in a form", () => {
  const { rating } = PLUG_BLOCK.particulars ?? {};
  const particulars = { rating: { ...(rating ?? { title: "" }), order: 4 } };
  const { values } = PLUG_BLOCK;
  const doc = resolved(including({ ...EXTENSION_LEAD, particulars, values }, "plug"), PLUG_BLOCK);
  expect(doc.particulars).toEqual(particulars);
});

const check = { $ref: "#/$defs/check" as const, title: "Other" };
it.each<[string, Checklist, readonly Block[], string, string, object]>([
  [
    "an unknown block is named with the nearest one",
    including(EXTENSION_LEAD, "plugg"),
    [PLUG_BLOCK],
    "/include/0/block",
    "block-unknown",
    { block: "plugg", nearest: "plug" },
  ],
  [
    "a point's name is taken by the checklist",
    including({ ...EXTENSION_LEAD, properties: { fuse: check } }, "plug"),
    [PLUG_BLOCK],
    "/include/0/block",
    "block-name-taken",
    { block: "plug", name: "fuse" },
  ],
  [
    "a particular of another meaning has the name",
    including({ ...EXTENSION_LEAD, particulars: { rating: { title: "Stars" } } }, "plug"),
    [PLUG_BLOCK],
    "/include/0/block",
    "block-name-taken",
    { block: "plug", name: "rating" },
  ],
  [
    "a value of another size has the name",
    including({ ...EXTENSION_LEAD, values: { fuse_most: { unit: "A", const: 16 } } }, "plug"),
    [PLUG_BLOCK],
    "/include/0/block",
    "block-name-taken",
    { block: "plug", name: "fuse_most" },
  ],
  [
    "a group has the name of the block's",
    including({ ...EXTENSION_LEAD, groups: [{ id: "pins", title: "P", points: [] }] }, "plug"),
    [PLUG_BLOCK],
    "/include/0/block",
    "block-name-taken",
    { block: "plug", name: "pins" },
  ],
  [
    "a point's name is taken by a block before",
    including(EXTENSION_LEAD, "tag", "plug"),
    [PLUG_BLOCK, named("tag", { points: { pin: check } })],
    "/include/1/block",
    "block-name-taken",
    { block: "plug", name: "pin" },
  ],
  [
    "a block is included twice",
    including(EXTENSION_LEAD, "plug", "plug"),
    [PLUG_BLOCK],
    "/include/1/block",
    "block-name-taken",
    { block: "plug", name: "plug" },
  ],
  [
    "a block words a text of the checklist",
    including(EXTENSION_LEAD, "tag"),
    [named("tag", { wording: { cy: { "/points/cable/title": "Cebl" } } })],
    "/include/0/block",
    "block-not-right",
    { block: "tag" },
  ],
  [
    "a block words a place by the checklist's own pointer",
    including(EXTENSION_LEAD, "tag"),
    [named("tag", { wording: { cy: { "/properties/cable/title": "Cebl" } } })],
    "/include/0/block",
    "block-not-right",
    { block: "tag" },
  ],
])("refused at its place: %s", (_, doc, blocks, pointer, code, params) => {
  expect(problems(doc, ...blocks)).toEqual([{ pointer, code, params }]);
});

test("a block kept under another name than its own is refused", () => {
  const result = resolveBlocks(including(EXTENSION_LEAD, "tag"), () => PLUG_BLOCK);
  expect(result).toMatchObject({ ok: false, problems: [{ code: "block-not-right" }] });
});

test("a block's point is one point in every checklist; any other belongs to its checklist", () => {
  const other = resolved(including(LEAVES_AND_SOCKETS, "plug"), PLUG_BLOCK);
  expect(pointIdentity("lead", withPlug, "fuse")).toEqual({ block: "plug", point: "fuse" });
  expect(pointIdentity("door", other, "fuse")).toEqual(pointIdentity("lead", withPlug, "fuse"));
  expect(pointIdentity("lead", withPlug, "cable")).toEqual({ checklist: "lead", point: "cable" });
  expect(pointIdentity("lead", issueDocument(withPlug), "fuse")).toHaveProperty("block", "plug");
  expect(() => pointIdentity("lead", withPlug, "toString")).toThrow(RangeError);
});
