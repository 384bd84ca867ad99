import { lintChecklist } from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { expect, test } from "vitest";
import { addPoint, changePoint } from "./commands.ts";
import { emptyDocument } from "./draft-document.ts";
import { mend, withoutMisplaced } from "./mend.ts";

const broken = () => {
  const begun = {
    ...emptyDocument("Lead"),
    particulars: { class: { title: "Class", enum: ["I", "II"] } },
  };
  const { document } = addPoint(begun, "check", "Earth pin", null);
  return changePoint(document, "earth_pin", (point) => ({
    ...point,
    ask: { mandatory: true, when: "asset.clas == 'I'" },
  }));
};

test("a name that is nearly right is put right in its place, and the problem is gone", () => {
  const engine = createFormulaEngine();
  const [problem] = lintChecklist(broken(), engine);
  if (!problem) throw new Error("no problem found");
  const mended = mend(broken(), problem);
  expect(mended?.properties.earth_pin?.ask?.when).toBe("asset.class == 'I'");
  if (!mended) throw new Error("nothing mended");
  expect(lintChecklist(mended, engine).map(({ code }) => code)).not.toContain("unknown-name");
});

test("without anything near, or at a place that is gone, nothing is changed", () => {
  const problem = { pointer: "/properties/earth_pin/ask/when", code: "unknown-name", params: {} };
  expect(mend(broken(), problem)).toBeNull();
  expect(
    mend(broken(), { ...problem, pointer: "/properties/gone/ask", params: { nearest: "x" } }),
  ).toBeNull();
});

test("a wording at no place of the checklist is put to the one meant, or taken away", () => {
  const { document } = addPoint(emptyDocument("Lead"), "check", "Earth pin", null);
  const list = { ...document, wording: { cy: { "/properties/earth_pim/title": "Pin daear" } } };
  const problem = lintChecklist(list).find(({ code }) => code === "wording-unknown-place");
  if (!problem) throw new Error("no problem found");
  expect(mend(list, problem)?.wording).toEqual({
    cy: { "/properties/earth_pin/title": "Pin daear" },
  });
  expect(withoutMisplaced(list, problem)?.wording).toEqual({ cy: {} });
});

test("a wording that is there already is not written over by one put to its place", () => {
  const { document } = addPoint(emptyDocument("Lead"), "check", "Earth pin", null);
  const cy = { "/properties/earth_pim/title": "Hen", "/properties/earth_pin/title": "Pin daear" };
  const list = { ...document, wording: { cy } };
  const problem = lintChecklist(list).find(({ code }) => code === "wording-unknown-place");
  if (!problem) throw new Error("no problem found");
  expect(mend(list, problem)).toBeNull();
  expect(withoutMisplaced(list, problem)?.wording).toEqual({
    cy: { "/properties/earth_pin/title": "Pin daear" },
  });
  expect(withoutMisplaced(document, problem)).toBeNull();
});
