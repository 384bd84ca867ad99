import type { AssetRow, SiteBundle } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { markHits, searchRegister } from "./register-search.ts";

const asset = (number: string, description: string, room: string): AssetRow => ({
  id: number,
  number,
  assetType: "lead",
  description,
  site: "s",
  place: room,
  path: ["Boat Workshop", room],
  particulars: {},
  serial: null,
  status: "in-service",
  order: 0,
  registeredOn: "2026-01-01",
});

const bundle = {
  site: { id: "s", name: "Boat Workshop" },
  assets: [
    asset("4035", "Extension lead, 10 m × 1.5 mm²", "Machine shop"),
    asset("4033", "Extension lead, 10 m × 1.5 mm²", "Machine shop"),
    asset("410", "Bench grinder, 150 mm", "Machine shop"),
    asset("4067", "Extension lead, drum, 10 m", "Sail loft"),
  ],
  due: [],
} as unknown as SiteBundle;

const numbers = (words: string) =>
  searchRegister([bundle], { words, site: null, status: null }).flatMap((site) =>
    site.found.map((one) => one.asset.number),
  );

describe("searching the register", () => {
  test("every word has to stand somewhere in number, description or place", () => {
    expect(numbers("lead 10")).toEqual(["4033", "4035", "4067"]);
    expect(numbers("lead sail")).toEqual(["4067"]);
    expect(numbers("lead boiler")).toEqual([]);
  });

  test("without words everything is listed, by place and then by number as a number", () => {
    expect(numbers("")).toEqual(["410", "4033", "4035", "4067"]);
  });

  test("hits are told apart from the text around them, and no text is lost", () => {
    const pieces = markHits("Extension lead, 10 m", "LEAD 10");
    expect(pieces.filter((piece) => piece.hit).map((piece) => piece.text)).toEqual(["lead", "10"]);
    expect(pieces.map((piece) => piece.text).join("")).toBe("Extension lead, 10 m");
  });
});
