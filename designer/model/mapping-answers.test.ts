import type { Checklist } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { emptyDocument } from "./draft-document.ts";
import { answersOf, firstAnswers, meaningsOf, wordTwice } from "./mapping-answers.ts";
import {
  firstFields,
  type MappingFields,
  mappingOf,
  placeColumns,
  wanting,
} from "./mapping-fields.ts";

const outlet: Checklist = {
  ...emptyDocument("Outlet"),
  properties: {
    tap: { $ref: "#/$defs/check", title: "Tap whole?" },
    spout: {
      $ref: "#/$defs/choice",
      title: "Spout",
      oneOf: [
        { const: "clean", title: "Clean" },
        { const: "scaled", title: "Scaled" },
      ],
    },
    hot: {
      $ref: "#/$defs/reading",
      title: "Hot water",
      quantity: { unit: "Cel", alsoIn: ["[degF]"] },
    },
    flow: { $ref: "#/$defs/reading", title: "Flow", quantity: { unit: "L/min" } },
  },
};
const file = {
  name: "outlets.csv",
  columns: ["No", "Date", "Tap", "Spout", "Hot water", "Flow"],
  sample: [["1", "2026-03-04", "Y", "clean", "55", "6"]],
};
const fields = (): MappingFields => ({
  ...firstFields(file),
  kind: "results",
  checklist: "0190a0c0-0000-7000-8000-000000000001",
  answers: firstAnswers(file.columns, outlet),
});

test("an empty cell is a question nobody answered until its own point says otherwise", () => {
  const chosen = fields();
  for (const how of Object.values(answersOf(outlet, chosen.answers, []))) {
    expect(how).not.toHaveProperty("empty");
  }
  if (chosen.answers.flow) chosen.answers.flow.empty = "no-access";
  const answers = answersOf(outlet, chosen.answers, []);
  expect(answers.flow).toMatchObject({ empty: "no-access" });
  expect(answers.tap).not.toHaveProperty("empty");
});

test("the unit of a reading is asked where the point takes more than one", () => {
  const chosen = fields();
  expect(chosen.answers.flow?.unit).toBe("L/min");
  expect(wanting(chosen, outlet, 1)).toEqual({ what: "unit", point: "Hot water", word: "" });
  if (chosen.answers.hot) chosen.answers.hot.unit = "[degF]";
  expect(wanting(chosen, outlet, 1)).toBeNull();
  expect(mappingOf(chosen, outlet)).toMatchObject({ answers: { hot: { unit: "[degF]" } } });
});

test("a check takes the words of all checks unless it has its own", () => {
  const { answers } = fields();
  expect(answersOf(outlet, answers, ["Y, yes", "N"]).tap?.words).toEqual({
    Y: "ok",
    yes: "ok",
    N: "not-ok",
  });
  if (answers.tap) answers.tap.words = ["fine", "", "n/a"];
  expect(answersOf(outlet, answers, ["Y", "N"]).tap?.words).toEqual({
    fine: "ok",
    N: "not-ok",
    "n/a": "not-applicable",
  });
});

test("one word never means two things, whatever its case", () => {
  const { answers } = fields();
  const { tap } = outlet.properties;
  if (!tap || !answers.tap) throw new Error("the point under test");
  expect(meaningsOf(tap).map(({ value }) => value)).toEqual(["ok", "not-ok", "not-applicable"]);
  expect(wordTwice(tap, answers.tap, ["Y", "y"])).toBe("y");
  expect(wordTwice(tap, answers.tap, ["Y", "N"])).toBeUndefined();
});

test("a file is not tried before its day, its way of writing days and an answer are known", () => {
  expect(wanting({ ...fields(), date: "" }, outlet, 1)).toEqual({ what: "date" });
  expect(wanting({ ...fields(), format: "" }, outlet, 1)).toEqual({ what: "format" });
  expect(wanting({ ...fields(), answers: {} }, outlet, 1)).toEqual({ what: "answers" });
});

test("where lines make assets their type and place are named", () => {
  const assets = { ...firstFields(file), kind: "register" as const };
  expect(wanting(assets, undefined, 1)).toEqual({ what: "type" });
  expect(wanting({ ...assets, assetType: "outlet" }, undefined, 1)).toBeNull();
  expect(wanting({ ...assets, assetType: "outlet" }, undefined, 2)).toEqual({ what: "place" });
  const byColumn = { ...assets, assetType: "=", typeColumn: "Kind", site: "1" };
  expect(mappingOf(byColumn, undefined).asset).toMatchObject({ assetType: { column: "Kind" } });
});

test("a column of buildings is never guessed to be one of sites", () => {
  const places = { ...file, columns: ["Building", "Room"] };
  expect(placeColumns(places, "")).toEqual(["", "", "", ""]);
  expect(placeColumns(places, "1")).toEqual(["Building", "Room", "", ""]);
  const sites = { ...file, columns: ["Site", "Room"] };
  expect(placeColumns(sites, "")).toEqual(["Site", "Room", "", ""]);
  expect(placeColumns(sites, "1")).toEqual(["Room", "", "", ""]);
});
