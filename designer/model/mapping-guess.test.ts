import { expect, test } from "vitest";
import { ASSET_WORDS, columnFor, guessFormat } from "./mapping-guess.ts";

const columns = ["_id", "Asset No.", "DESCRIPTION", "Tested on", "Gap (mm)"];

test("columns are found by their words, whatever their case, spaces and dots", () => {
  expect(columnFor(columns, ...ASSET_WORDS.number)).toBe("Asset No.");
  expect(columnFor(columns, ...ASSET_WORDS.description)).toBe("DESCRIPTION");
  expect(columnFor(columns, ...ASSET_WORDS.date)).toBe("Tested on");
  expect(columnFor(columns, ...ASSET_WORDS.serial)).toBe("");
});

test("day first and month first are told apart only by a figure over twelve", () => {
  expect(guessFormat(["03/04/2026", "13/04/2026"])).toBe("DD/MM/YYYY");
  expect(guessFormat(["03/04/2026", "04/13/2026"])).toBe("MM/DD/YYYY");
  expect(guessFormat(["03/04/2026", "04/05/2026"])).toBe("");
  expect(guessFormat(["2026-04-03", ""])).toBe("YYYY-MM-DD");
  expect(guessFormat(["3 Apr 2026"])).toBe("D MMM YYYY");
  expect(guessFormat(["2026-04-03", "3/4/2026"])).toBe("");
});
