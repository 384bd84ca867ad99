import type { Checklist } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { emptyDocument } from "./draft-document.ts";
import {
  ASSET_WORDS,
  columnFor,
  guessAnswers,
  guessFormat,
  guessParticulars,
  guessPlaces,
} from "./mapping-guess.ts";

const columns = ["_id", "Asset No.", "DESCRIPTION", "Tested on", "Gap (mm)"];

test("columns are found by their words, whatever their case, spaces and dots", () => {
  expect(columnFor(columns, ASSET_WORDS.number)).toBe("Asset No.");
  expect(columnFor(columns, ASSET_WORDS.description)).toBe("DESCRIPTION");
  expect(columnFor(columns, ASSET_WORDS.date)).toBe("Tested on");
  expect(columnFor(columns, ASSET_WORDS.serial)).toBe("");
});

test("a column about something else is never taken for its last word", () => {
  expect(columnFor(["Serial number", "Room no"], ASSET_WORDS.number)).toBe("");
  expect(columnFor(["Next due date"], ASSET_WORDS.date)).toBe("");
  expect(columnFor(["Valid", "Site ID"], ASSET_WORDS.key)).toBe("");
  expect(columnFor(["Casino"], ASSET_WORDS.number)).toBe("");
});

test("of two columns that end alike none is guessed", () => {
  expect(columnFor(["Test date", "Report date"], ASSET_WORDS.date)).toBe("");
  expect(columnFor(["Test date", "Report"], ASSET_WORDS.date)).toBe("Test date");
});

test("places are found from the site down", () => {
  expect(guessPlaces(["Room", "Building", "SITE"])).toEqual({
    fromSite: true,
    columns: ["SITE", "Building", "Room"],
  });
  expect(guessPlaces(["Location", "Gap"])).toEqual({ fromSite: false, columns: ["Location"] });
});

test("day first and month first are told apart only by a figure over twelve", () => {
  expect(guessFormat(["03/04/2026", "13/04/2026"])).toBe("DD/MM/YYYY");
  expect(guessFormat(["03/04/2026", "04/13/2026"])).toBe("MM/DD/YYYY");
  expect(guessFormat(["03/04/2026", "04/05/2026"])).toBe("");
  expect(guessFormat(["13/04/2026", "04/13/2026"])).toBe("");
  expect(guessFormat(["2026-04-03", ""])).toBe("YYYY-MM-DD");
  expect(guessFormat(["3 Apr 2026"])).toBe("D MMM YYYY");
  expect(guessFormat(["2026-04-03", "3/4/2026"])).toBe("");
});

const lead: Checklist = {
  ...emptyDocument("Lead"),
  properties: {
    cable_free: { $ref: "#/$defs/check", title: "Cable free of cuts?" },
    plug: { $ref: "#/$defs/check", title: "Plug whole?" },
    picture: { $ref: "#/$defs/photo", title: "Picture of the plug" },
  },
};

test("a point is answered by the column that reads the same or alone begins its question", () => {
  expect(guessAnswers(["Cable", "Plug", "Remark"], lead)).toEqual({
    cable_free: "Cable",
    plug: "Plug",
  });
});

test("a column that could be either of two is guessed for neither", () => {
  const twice: Checklist = {
    ...lead,
    properties: { ...lead.properties, cord: { $ref: "#/$defs/check", title: "Cable tidy?" } },
  };
  expect(guessAnswers(["Cable"], twice)).toMatchObject({ cable_free: "", cord: "" });
});

test("a particular is found by the end of its title", () => {
  const particulars = {
    protection_class: { title: "Protection class" },
    length: { title: "Length" },
  };
  expect(guessParticulars(["Length", "Class"], particulars)).toEqual({
    protection_class: "Class",
    length: "Length",
  });
});

test("a unit after its name is the same column, another unit is another", () => {
  const particulars = {
    length: { title: "Length", type: "number", unit: "m" },
    csa: { title: "Conductor cross-section", type: "number", unit: "mm2" },
  } as const;
  const columns = ["No", "Length (m)", "Conductor cross-section [mm²]"];
  expect(guessParticulars(columns, particulars)).toEqual({
    length: "Length (m)",
    csa: "Conductor cross-section [mm²]",
  });
  expect(guessParticulars(["Length (mm)"], particulars).length).toBe("");
});
