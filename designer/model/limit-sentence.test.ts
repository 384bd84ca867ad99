import type { PointDefinition } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { type DraftDocument, emptyDocument } from "./draft-document.ts";
import { limitSentence, pointNote } from "./limit-sentence.ts";

const lead: DraftDocument = {
  ...emptyDocument("Lead"),
  particulars: { length: { title: "Length", type: "number", unit: "m" } },
};

const reading: PointDefinition = {
  $ref: "#/$defs/reading",
  title: "Hot water",
  quantity: { unit: "Cel" },
};

test("a limit is a sentence that says which side of the bound fails", () => {
  expect(limitSentence(lead, reading, { min: 50 })).toBe("Fails below 50\u00a0°C.");
  expect(limitSentence(lead, reading, { exclusiveMax: 20 })).toBe("Fails at or above 20\u00a0°C.");
  expect(limitSentence(lead, reading, { min: 50, max: 60, severity: "advisory" })).toBe(
    "Advises below 50\u00a0°C or above 60\u00a0°C.",
  );
  expect(limitSentence(lead, reading, { max: "joints + asset.length * r" })).toBe(
    "Fails above joints + length × r.",
  );
});

test("a choice that passes is named by its words, not by its value", () => {
  const choice: PointDefinition = {
    $ref: "#/$defs/choice",
    title: "Feet",
    oneOf: [
      { const: "good", title: "Whole" },
      { const: "worn", title: "Worn" },
    ],
  };
  expect(limitSentence(lead, choice, { accept: ["good"] })).toBe("Fails unless Whole.");
});

test("a closed point says in one line what passes, and what else it is", () => {
  const check: PointDefinition = {
    $ref: "#/$defs/check",
    title: "Cable whole?",
    limits: [{ accept: ["ok"] }],
    grade: { means: "danger-now" },
  };
  expect(pointNote(lead, check)).toBe("OK passes, else a danger now");
  expect(pointNote(lead, { ...check, grade: undefined })).toBe("OK passes, else it fails");
  expect(pointNote(lead, { ...reading, limits: [{ min: 50 }] })).toBe("fails below 50\u00a0°C");
  expect(pointNote(lead, { ...reading, limits: [{ max: "asset.length" }] })).toBe(
    "fails above a limit worked out",
  );
});
