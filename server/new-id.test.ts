import { UUID } from "@roundbook/schemas";
import { describe, expect, it } from "vitest";
import { createNewId } from "./new-id.ts";

describe("ids", () => {
  it("are RFC 9562 version 7 with the millisecond in front", () => {
    // RFC 9562, appendix A.6: 2022-02-22T14:22:22-05:00 is 0x017F22E279B0.
    const id = createNewId(() => 1_645_557_742_000)();
    expect(id).toMatch(new RegExp(UUID));
    expect(id.slice(0, 15)).toBe("017f22e2-79b0-7");
  });

  it("sort in the order they were made, within a millisecond and when the clock is set back", () => {
    let now = 1_000_000;
    const newId = createNewId(() => now);
    const ids = Array.from({ length: 20_000 }, (_, index) => {
      if (index === 9_000) now -= 500;
      return newId();
    });
    expect(ids.toSorted()).toEqual(ids);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
