import { describe, expect, test } from "vitest";
import { anchorOf, type LabelWish, type PlacedLabel, placeLabels } from "./limit-labels.ts";
import { lineBox } from "./limit-scale.ts";

const wish = (text: string, x: number, side: LabelWish["side"], strong = false): LabelWish => ({
  text,
  x,
  side,
  strong,
});

function touching(labels: readonly PlacedLabel[]) {
  return labels.some((one, at) =>
    labels.some(
      (other, index) =>
        index > at &&
        one.line === other.line &&
        one.left < other.left + other.width &&
        other.left < one.left + one.width,
    ),
  );
}

describe("the labels of a limit line", () => {
  test("stand on one line, each on its own side, when there is room", () => {
    const [max, last] = placeLabels([
      wish("max 0.233", 171, "after", true),
      wish("30 Apr: 0.198", 148, "before"),
    ]);
    expect(max?.line).toBe(0);
    expect(last?.line).toBe(0);
    expect(anchorOf(max as PlacedLabel)).toEqual({ x: 168, textAnchor: "start" });
    expect(anchorOf(last as PlacedLabel).textAnchor).toBe("end");
  });

  test("never touch, whatever stands beside what", () => {
    for (const x of [14, 40, 90, 149, 200, 250, 284]) {
      for (const near of [0, 2, 10, 60]) {
        const labels = placeLabels([
          wish("min 50.0", x, "before", true),
          wish("max 60.0", Math.min(284, x + near), "after", true),
          wish("9 September: 54.2", x, "before"),
        ]);
        expect(labels).toHaveLength(3);
        expect(touching(labels)).toBe(false);
      }
    }
  });

  test("stay within the drawing", () => {
    for (const side of ["before", "after"] as const) {
      for (const x of [14, 284]) {
        const [label] = placeLabels([wish("max 0.233", x, side, true)]);
        expect(label?.left).toBeGreaterThanOrEqual(0);
        expect((label?.left ?? 0) + (label?.width ?? 0)).toBeLessThanOrEqual(lineBox.width + 4);
      }
    }
  });
});
