import { afterEach, expect, test } from "vitest";
import { addGroup, addPoint, changePoint } from "../model/commands.ts";
import { type DraftDocument, emptyDocument } from "../model/draft-document.ts";
import { type MountedEditor, mountEditor } from "../testing/mount-editor.tsx";

let editor: MountedEditor;
afterEach(() => editor.unmount());

const lead = (): DraftDocument => {
  const begun: DraftDocument = {
    ...addGroup(emptyDocument("Lead"), "Measure"),
    particulars: {
      length: { title: "Length", order: 1, type: "number", unit: "m", minimum: 0.5, maximum: 100 },
    },
    values: {
      joints: { title: "Allowance for joints", const: 0.1, unit: "Ohm", basis: "Own practice" },
    },
  };
  const { document } = addPoint(begun, "reading", "Earth continuity", "measure");
  return changePoint(document, "earth_continuity", (point) => ({
    ...point,
    quantity: { unit: "Ohm", decimals: 3 },
    limits: [{ max: "joints * 2" }],
  }));
};
const limits = () => editor.document().properties.earth_continuity?.limits;

test("a limit by formula reads in titles, and its blank opens with the formula itself", async () => {
  editor = await mountEditor(lead(), "earth_continuity");
  expect(editor.text()).toContain("above allowance for joints × 2, because …");
  await editor.press("allowance for joints × 2");
  expect(editor.text()).toContain("Reads: allowance for joints × 2.");
});

test("a name that is not known is shown in its place, and the nearest is put there on request", async () => {
  editor = await mountEditor(lead(), "earth_continuity");
  await editor.press("allowance for joints × 2");
  await editor.write("jionts * 2");
  expect(editor.text()).toContain("At 1: “jionts” is not known here; nearest: “joints”.");
  await editor.press("Use it");
  expect(editor.text()).toContain("Ω × 2 gives Ω.");
});

test("a length where a resistance is asked is refused while it is typed", async () => {
  editor = await mountEditor(lead(), "earth_continuity");
  await editor.press("allowance for joints × 2");
  await editor.write("asset.length");
  expect(editor.text()).toContain("At 1: Needs Ω; this comes to m.");
});

test("Escape leaves what stood there, Enter takes what was typed", async () => {
  editor = await mountEditor(lead(), "earth_continuity");
  await editor.press("allowance for joints × 2");
  await editor.write("0,25");
  await editor.key("Escape");
  expect(limits()).toEqual([{ max: "joints * 2" }]);
  await editor.press("allowance for joints × 2");
  await editor.write("0,25");
  await editor.key("Enter");
  expect(limits()).toEqual([{ max: 0.25 }]);
});

test("a limit may be let advise, and be bound at its other side too", async () => {
  editor = await mountEditor(lead(), "earth_continuity");
  await editor.press("Basis, not written");
  await editor.press("Let it advise instead");
  await editor.press("Also below");
  await editor.write("0.01");
  await editor.key("Enter");
  expect(limits()).toEqual([{ max: "joints * 2", severity: "advisory", min: 0.01 }]);
});

test("a unit is taken as people write it, and an unknown one is refused by name", async () => {
  editor = await mountEditor(lead(), "earth_continuity");
  await editor.press("no other unit");
  await editor.write("mΩ, furlong");
  await editor.key("Enter");
  expect(editor.text()).toContain("“furlong” is no unit known here");
  await editor.write("mΩ");
  await editor.key("Enter");
  expect(editor.document().properties.earth_continuity?.quantity?.alsoIn).toEqual(["mOhm"]);
});

test("what stands around the points is one line where there are points, and opens on request", async () => {
  editor = await mountEditor(lead());
  expect(editor.text()).toContain("It needs: Length. It counts with: Allowance for joints.");
  expect(editor.text()).not.toContain("Another named value");
  await editor.press("Show");
  expect(editor.text()).toContain("Another named value");
});

test("renaming a particular keeps its unit and its range", async () => {
  editor = await mountEditor(lead());
  await editor.press("Show");
  await editor.press("Length");
  await editor.write("Length of the lead");
  await editor.key("Enter");
  expect(editor.document().particulars?.length).toEqual({
    title: "Length of the lead",
    order: 1,
    type: "number",
    unit: "m",
    minimum: 0.5,
    maximum: 100,
  });
});

test("another particular is asked for its kind at once", async () => {
  editor = await mountEditor(lead());
  await editor.press("Show");
  await editor.press("Another thing to know");
  await editor.write("Protection class");
  await editor.key("Enter");
  expect(editor.text()).toContain("It is given as");
  await editor.press("words");
  expect(editor.document().particulars?.protection_class).toMatchObject({
    type: "string",
    order: 2,
  });
});

test("a group is renamed in place, and its points stay in it", async () => {
  editor = await mountEditor(lead());
  await editor.press("answered one by one");
  await editor.write("Test");
  await editor.key("Enter");
  expect(editor.document().groups).toEqual([
    { id: "measure", title: "Test", points: ["earth_continuity"] },
  ]);
});
