import { compileJudge } from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { act } from "react";
import { createRoot } from "react-dom/client";
import { expect, test } from "vitest";
import { BlankSheet } from "./blank-sheet.tsx";
import { checklistOf } from "./testing/kinds.ts";

globalThis.IS_REACT_ACT_ENVIRONMENT = true;

const LEAD = checklistOf({
  cable: {
    $ref: "#/$defs/check",
    title: "Cable whole?",
    limits: [{ accept: ["ok"] }],
    ask: { absentAllowed: ["not-applicable"] },
  },
  gap: {
    $ref: "#/$defs/reading",
    title: "Gap",
    quantity: { unit: "mm", decimals: 1 },
    limits: [{ min: 2, max: 4, basis: "Clause 8" }],
  },
  earth: {
    $ref: "#/$defs/reading",
    title: "Earth continuity",
    quantity: { unit: "Ohm" },
    limits: [{ max: "0.1 + asset.length * 0.01" }],
  },
});
const WITH_LENGTH = {
  ...LEAD,
  particulars: { length: { title: "Length", type: "number" } },
} as typeof LEAD;

async function printed(particulars: Record<string, number>): Promise<string> {
  const page = document.createElement("div");
  const root = createRoot(page);
  const judge = compileJudge(WITH_LENGTH, createFormulaEngine());
  await act(async () =>
    root.render(<BlankSheet document={WITH_LENGTH} {...{ judge, particulars }} />),
  );
  const text = (page.textContent ?? "").replaceAll("\u00a0", " ");
  await act(async () => root.unmount());
  return text;
}

test("a blank sheet has every point with its choices, its limits and their basis, and no answer", async () => {
  const text = await printed({ length: 10 });
  expect(text).toContain("Cable whole?");
  expect(text).toContain("OK");
  expect(text).toContain("Not applicable");
  expect(text).toContain("2.0 to 4.0 mm");
  expect(text).toContain("Clause 8");
  expect(text).toContain("max 0.2 Ω");
  expect(text).not.toMatch(/Pass|Fail|undecided/i);
});

test("a limit that hangs on what is not known says so instead of nothing", async () => {
  const text = await printed({});
  expect(text).toContain("Its limit follows from particulars that are not known here.");
  expect(text).not.toContain("max 0.2");
});
