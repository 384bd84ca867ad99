import type { AssetRow } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { suggestDescriptions } from "./register-suggest.ts";

const named = (...descriptions: string[]) =>
  descriptions.map((description) => ({ description, assetType: "lead" }) as AssetRow);
const texts = (assets: readonly AssetRow[], typed: string, type = "lead") =>
  suggestDescriptions(assets, typed, type).map(({ text }) => text);

describe("suggested descriptions", () => {
  const assets = named(
    "Lead, 5 m",
    "Lead, 5 m",
    "Lead, 10 m",
    "Long lead",
    "Long lead",
    "Long lead",
  );

  test("begin as typed, then hold a word that does; among them the commonest first", () => {
    expect(suggestDescriptions(assets, "lead", "lead")).toEqual([
      { text: "Lead, 5 m", count: 2 },
      { text: "Lead, 10 m", count: 1 },
      { text: "Long lead", count: 3 },
    ]);
  });

  test("are of the same type only", () => {
    expect(texts(assets, "lead", "ladder")).toEqual([]);
  });

  test("before anything is typed are the commonest of the type", () => {
    expect(texts(assets, "")).toEqual(["Long lead", "Lead, 5 m", "Lead, 10 m"]);
  });

  test("what is typed in full is not suggested again, written otherwise it is", () => {
    expect(texts(assets, "Lead, 5 m")).not.toContain("Lead, 5 m");
    expect(texts(assets, "lead, 5 M")[0]).toBe("Lead, 5 m");
  });

  test("one or two slips are forgiven, fewer before more, begun or in full; three are not", () => {
    const monitors = named("Monitor, 24 inch", "Monitor, 24 inch", "Mointer stand");
    expect(texts(monitors, "mointr")).toEqual(["Mointer stand", "Monitor, 24 inch"]);
    expect(texts(monitors, "monitor, 42 inhc")).toEqual(["Monitor, 24 inch"]);
    expect(texts(monitors, "mxxxtor")).toEqual([]);
  });

  test("with three letters or fewer a slip is not told from another word", () => {
    expect(texts(named("Lid"), "led")).toEqual([]);
  });
});
