import { expect, test } from "vitest";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { formulaWords, unitSum } from "./formula-words.ts";

const lead: DraftDocument = {
  ...emptyDocument("Lead"),
  particulars: {
    length: { title: "Length", type: "number", unit: "m" },
    class: { title: "Protection class", enum: ["I", "II"] },
  },
  values: {
    joints: { title: "Allowance for joints", unit: "Ohm", const: 0.1 },
    r_per_m: { unit: "Ohm/m", const: 0.0133 },
  },
  properties: {
    plug: {
      $ref: "#/$defs/choice",
      title: "Plug",
      oneOf: [
        { const: "uk", title: "BS 1363" },
        { const: "other", title: "Another" },
      ],
    },
  },
};

test("a condition reads as a sentence", () => {
  expect(formulaWords(lead, "asset.class == 'I' && answers.plug != 'uk'")).toBe(
    "protection class is I and plug is not BS 1363",
  );
});

test("a bound reads with titles, and a name without a title stands as it is", () => {
  expect(formulaWords(lead, "joints + asset.length * r_per_m")).toBe(
    "allowance for joints + length × r_per_m",
  );
});

test("a choice between two reads on as then and else, however it is spaced", () => {
  const words = "protection class is I, then allowance for joints, else 2 × r_per_m";
  expect(formulaWords(lead, "asset.class == 'I' ? joints : 2 * r_per_m")).toBe(words);
  expect(formulaWords(lead, "asset.class == 'I'?joints:2 * r_per_m")).toBe(words);
});

test("what nothing is called stays as it was typed", () => {
  expect(formulaWords(lead, "asset.lenght * 2")).toBe("asset.lenght × 2");
  expect(formulaWords(lead, "constructor")).toBe("constructor");
});

test("a formula is summed in units, and figures alone have no unit sum", () => {
  const units: Record<string, string> = { joints: "Ohm", "asset.length": "m", r_per_m: "Ohm/m" };
  expect(unitSum("joints + asset.length * r_per_m", (name) => units[name])).toBe("Ω + m × Ω/m");
  expect(unitSum("0.1 + 2", (name) => units[name])).toBeNull();
});
