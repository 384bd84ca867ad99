import type { PointDefinition } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { limitSentence } from "./limit-sentence.ts";

const reading: PointDefinition = {
  $ref: "#/$defs/reading",
  title: "Hot water",
  quantity: { unit: "Cel" },
};

test("a limit is a sentence that says which side of the bound fails", () => {
  expect(limitSentence(reading, { min: 50 })).toBe("Fails below 50\u00a0°C.");
  expect(limitSentence(reading, { exclusiveMax: 20 })).toBe("Fails at or above 20\u00a0°C.");
  expect(limitSentence(reading, { min: 50, max: 60, severity: "advisory" })).toBe(
    "Advises below 50\u00a0°C or above 60\u00a0°C.",
  );
  expect(limitSentence(reading, { max: "joints + asset.length * r" })).toBe(
    "Fails above joints + asset.length * r.",
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
  expect(limitSentence(choice, { accept: ["good"] })).toBe("Fails unless Whole.");
});
