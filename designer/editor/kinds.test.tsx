import { afterEach, expect, test } from "vitest";
import { addGroup, addPoint } from "../model/commands.ts";
import { type DraftDocument, emptyDocument } from "../model/draft-document.ts";
import { type MountedEditor, mountEditor } from "../testing/mount-editor.tsx";

let editor: MountedEditor;
afterEach(() => editor.unmount());

const one = (kind: Parameters<typeof addPoint>[1], title: string): DraftDocument =>
  addPoint(addGroup(emptyDocument("Outlet"), "Water"), kind, title, "water").document;
const point = (name: string) => editor.document().properties[name];
const write = async (blank: string | RegExp, text: string) => {
  await editor.press(blank);
  await editor.write(text);
  await editor.key("Enter");
};

test("a check becomes several readings, of which the highest counts", async () => {
  editor = await mountEditor(one("check", "Hot"), "hot");
  await editor.press("OK or not OK");
  expect(editor.text()).toContain("Measured");
  await editor.press("several readings");
  await editor.press("3");
  await editor.write("1");
  await editor.key("Enter");
  expect(editor.text()).toContain("A whole number from 2 to 50");
  await editor.write("4");
  await editor.key("Enter");
  await editor.press("each of them");
  await editor.press("the highest");
  expect(point("hot")?.several).toEqual({ count: 4, combine: "highest" });
});

test("a reading waits at least and at most so many seconds, and for nothing when both are empty", async () => {
  editor = await mountEditor(one("reading", "Hot"), "hot");
  await write("for nothing", "60");
  await write("and as long as it takes", "90");
  expect(point("hot")?.ask).toEqual({ mandatory: true, wait: { atLeast: 60, atMost: 90 } });
  await write("at least 60 s", "");
  await write("and at most 90 s", "");
  expect(point("hot")?.ask).toEqual({ mandatory: true });
});

test("a choice of several keeps the value of an option whose title stands", async () => {
  editor = await mountEditor(one("choices", "Found"), "found");
  await editor.press("Good, Worn, Broken");
  await editor.write("Good\nRusty");
  await editor.press("Done");
  expect(point("found")?.items?.oneOf).toEqual([
    { const: "good", title: "Good" },
    { const: "rusty", title: "Rusty" },
  ]);
});

test("what is worked out is not asked, and says its formula", async () => {
  editor = await mountEditor(one("calculated", "Difference"), "difference");
  expect(editor.text()).not.toContain("must be answered");
  await write("0", "2 * 3");
  expect(point("difference")?.calculate).toBe("2 * 3");
});

test("a date fails before the day of the check, or some time after it", async () => {
  editor = await mountEditor(one("date", "Use by"), "use_by");
  await editor.press("Another limit");
  expect(editor.text()).toContain("before exactly the day of the check");
  await editor.press("exactly");
  await editor.write("3 moons after");
  await editor.key("Enter");
  expect(editor.text()).toContain("Write it as “3 months after” or “2 weeks before”");
  await editor.write("3 months after");
  await editor.key("Enter");
  expect(point("use_by")?.limits).toEqual([{ notBefore: { from: "today", plus: "P3M" } }]);
  await editor.press("before");
  await editor.press("after");
  expect(point("use_by")?.limits).toEqual([{ notAfter: { from: "today", plus: "P3M" } }]);
});

test("a figure may be compared with the last time in place of a bound, and back", async () => {
  editor = await mountEditor(one("count", "Signs"), "signs");
  await editor.press("Another limit");
  await editor.write("12");
  await editor.key("Enter");
  await editor.press("Basis, not written");
  await editor.press("Compare with the last time instead");
  await write("0", "2");
  await editor.press("it is undecided");
  await editor.press("the limit does not apply");
  expect(point("signs")?.limits).toEqual([{ sameAsLast: { within: 2, whenNone: "not-applied" } }]);
});

test("a limit reckons with uncertainty by one of the published rules", async () => {
  editor = await mountEditor(one("reading", "Hot"), "hot");
  await editor.press("Another limit");
  await editor.write("60");
  await editor.key("Enter");
  await editor.press("Basis, not written");
  await editor.press("Reckon with uncertainty…");
  await editor.press("it passes only where no doubt is left");
  await write("…", "0.5");
  expect(point("hot")?.limits).toEqual([
    { max: 60, decision: { rule: "guarded-acceptance", uncertainty: 0.5 } },
  ]);
});

test("a group is asked once, by number, or for members by name", async () => {
  editor = await mountEditor(one("check", "Valve"));
  const group = () => editor.document().groups?.[0];
  await editor.press("answered one by one");
  await editor.press("once");
  await editor.press("for each of several, by number");
  expect(group()?.repeat).toEqual({ each: "Leaf", count: 2 });
  await write("2", "asset.valves");
  await write("however many", "6");
  expect(group()?.repeat).toEqual({ each: "Leaf", count: "asset.valves", atMost: 6 });
  await editor.press("for each of several, by number");
  await editor.press("for each of several, by name");
  expect(group()?.repeat?.members?.map(({ title }) => title)).toEqual(["Left", "Right"]);
});

test("a rule stops other points, and says why", async () => {
  const { document } = addPoint(one("check", "Tap whole?"), "check", "Valve closes?", "water");
  editor = await mountEditor(document);
  await editor.press("Show");
  await editor.press("Another rule that stops");
  expect(editor.text()).toContain("after a fail of Tap whole? it does not ask Valve closes?");
  await write("Do not go on: it is not in order.", "Leave it shut.");
  expect(editor.document().stops).toEqual([
    { after: ["tap_whole"], on: ["fail"], points: ["valve_closes"], say: "Leave it shut." },
  ]);
  await editor.press("Remove the rule");
  expect(editor.document()).not.toHaveProperty("stops");
});
