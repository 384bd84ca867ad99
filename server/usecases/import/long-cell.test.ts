import type { PointDefinition } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { readAnswer } from "./answer.ts";

const GAP: PointDefinition = {
  $ref: "#/$defs/reading",
  title: "Gap",
  quantity: { unit: "mm", alsoIn: ["cm"] },
};
const GRADE: PointDefinition = { $ref: "#/$defs/graded", title: "G", minimum: 1, maximum: 5 };
const read = (point: PointDefinition, cell: string) =>
  readAnswer(point, { column: "x" }, [cell], { decimal: ".", format: "YYYY-MM-DD" });

describe("a cell of a reading", () => {
  // Matched as they stand these would take minutes: a quoted cell may hold a million characters.
  test.each([
    ["digits and separators without end", GAP, `${"1,".repeat(400_000)}\nx\ny`],
    ["digits without end", GAP, `${"1".repeat(800_000)}x`],
    ["digits for a grade", GRADE, `${"1".repeat(800_000)}x`],
  ])("of %s is refused, and told by its beginning", (_, point, cell) => {
    const found = read(point, cell);
    expect(found).toMatchObject({ ok: false, problems: [{ code: "number-format" }] });
    expect(JSON.stringify(found).length).toBeLessThan(300);
  });
});
