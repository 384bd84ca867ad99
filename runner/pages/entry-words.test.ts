import type { HistoryEntry } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { entryWords } from "./entry-words.tsx";

const row = (kind: string, body: object, flags: readonly string[] = []) =>
  ({ entry: { kind, body }, leaf: { flags }, contents: {} }) as unknown as HistoryEntry;

describe("what history says of an asset's own entries", () => {
  const body = { number: "4038", description: "Extension lead" };

  test("a number that clashed when it was sealed is told with the registration", () => {
    const { words } = entryWords(row("registered", body, ["duplicate-number"]), new Map());
    expect(words).toContain("another asset has this number");
    expect(entryWords(row("registered", body), new Map()).words).not.toContain("another asset");
  });

  test("a move names its new place, where this device knows its name", () => {
    const moved = row("moved", { place: "p" });
    expect(entryWords(moved, new Map([["p", "Slipway"]]))).toEqual({
      title: "Stands elsewhere from now on",
      words: "Slipway",
    });
    expect(entryWords(moved, new Map()).words).toBeUndefined();
  });
});
