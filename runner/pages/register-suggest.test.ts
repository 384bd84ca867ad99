import type { AssetRow } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { nextNumber, suggestDescriptions } from "./register-suggest.ts";

describe("the next number", () => {
  test("counts on from the highest of the site and keeps prefix and zeros", () => {
    expect(nextNumber(["4033", "4037", "12"])).toBe("4038");
    expect(nextNumber(["FD-009", "FD-010"])).toBe("FD-011");
    expect(nextNumber(["A007"])).toBe("A008");
    expect(nextNumber([])).toBe("1");
    expect(nextNumber(["no digits"])).toBe("1");
  });
});

describe("suggested descriptions", () => {
  const assets = ["Lead, 5 m", "Lead, 5 m", "Lead, 10 m"].map(
    (description) => ({ description, assetType: "lead" }) as AssetRow,
  );
  test("are this estate's own, the commonest first, of the same type only", () => {
    expect(suggestDescriptions(assets, "lead", "lead")).toEqual([
      { text: "Lead, 5 m", count: 2 },
      { text: "Lead, 10 m", count: 1 },
    ]);
    expect(suggestDescriptions(assets, "lead", "ladder")).toEqual([]);
  });

  test("what is typed in full is not suggested again", () => {
    expect(suggestDescriptions(assets, "Lead, 5 m", "lead")).toEqual([]);
  });
});
