import { lintChecklist } from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { expect, test } from "vitest";
import { addPoint, changePoint } from "./commands.ts";
import { emptyDocument } from "./draft-document.ts";
import { mend } from "./mend.ts";

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
