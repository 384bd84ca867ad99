import type { Block } from "@roundbook/schemas";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { addGroup, addPoint } from "../model/commands.ts";
import { emptyDocument, newPoint } from "../model/draft-document.ts";
import { type MountedEditor, mountEditor } from "../testing/mount-editor.tsx";

const block: Block = {
  dialect: "urn:roundbook:block:1",
  name: "plug",
  title: "Plug and flex",
  points: { plug_whole: newPoint("check", "Is the plug whole?") },
};
const draft = () =>
  addPoint(addGroup(emptyDocument("Lead"), "Look"), "check", "Sheath", "look").document;

let editor: MountedEditor;
let answer: () => Response;
const asked: { path: string; body: { revision: number; block: Block } }[] = [];
beforeEach(() => {
  asked.length = 0;
  vi.stubGlobal("fetch", async (path: string, init: RequestInit) => {
    asked.push({ path, body: JSON.parse(String(init.body)) });
    return answer();
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  return editor.unmount();
});

test("the points of a block stand in their place, to read only, and say their block", async () => {
  editor = await mountEditor({ ...draft(), include: [{ block: "plug" }] }, null, [block]);
  expect(editor.text()).toContain("Is the plug whole?");
  expect(editor.text()).toContain("block “Plug and flex”");
  expect(editor.text()).toContain("It takes in: Plug and flex.");
  await expect(editor.press("Is the plug whole?")).rejects.toThrow("no button");
});

test("without a block to take in nothing is said of blocks", async () => {
  editor = await mountEditor(draft());
  await editor.press("Show");
  expect(editor.text()).not.toContain("takes in");
});

test("a group kept as a block is kept first and then taken in; refused, the draft stays as it is", async () => {
  editor = await mountEditor(draft());
  await editor.press("answered one by one");
  answer = () => Response.json({ code: "block-exists" }, { status: 409 });
  await editor.press("Keep this group as a block");
  expect(editor.document()).toEqual(draft());
  expect(editor.text()).toContain("There is a block of this name already.");
  answer = () => Response.json({});
  await editor.press("Keep this group as a block");
  expect(asked.at(-1)).toMatchObject({ path: "/api/blocks/look_2", body: { revision: 0 } });
  expect(Object.keys(asked.at(-1)?.body.block.points ?? {})).toEqual(["sheath"]);
  expect(editor.document().include).toEqual([{ block: "look_2" }]);
  expect(editor.document().properties).toEqual({});
});
