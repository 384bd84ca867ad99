import { describe, expect, test } from "vitest";
import { clearTicks, lineBox, niceRange, scaleFor } from "./limit-scale.ts";

describe("the scale of a limit line", () => {
  test("runs from end to end of the line", () => {
    const x = scaleFor([0, 0.4]);
    expect(x(0)).toBe(lineBox.left);
    expect(x(0.4)).toBe(lineBox.right);
    expect(x(0.2)).toBeCloseTo(149, 9);
  });

  test("a figure beyond an end is drawn at that end, on its own side of every bar", () => {
    const x = scaleFor([0, 10]);
    expect(x(-5)).toBe(lineBox.left);
    expect(x(99)).toBe(lineBox.right);
  });

  test("a range without width puts everything in the middle instead of dividing by zero", () => {
    expect(scaleFor([3, 3])(3)).toBe(149);
  });
});

describe("a round range", () => {
  test("holds every figure and starts at zero when zero is near", () => {
    expect(niceRange([0.233, 0.198, 0.241])).toEqual({
      range: [0, 0.4],
      ticks: [0, 0.1, 0.2, 0.3, 0.4],
    });
  });

  test("leaves zero out when it is far off the figures", () => {
    expect(niceRange([50, 54.2])).toEqual({ range: [30, 80], ticks: [30, 40, 50, 60, 70, 80] });
  });

  test("holds negative figures with room beyond both ends", () => {
    const { range } = niceRange([-22, -18]);
    expect(range[0]).toBeLessThan(-22);
    expect(range[1]).toBeGreaterThan(-18);
  });

  test("keeps two close limits apart", () => {
    const { range } = niceRange([99.5, 100.5]);
    const x = scaleFor(range);
    expect(x(100.5) - x(99.5)).toBeGreaterThan(15);
  });

  test.each([[[7]], [[0]], [[-3]], [[1e-9, 2e-9]], [[5e6, 7.2e6]], [[0, 1000]]])(
    "has 3 to 8 ticks, rising, for %j",
    (figures) => {
      const { range, ticks } = niceRange(figures);
      expect(ticks.length).toBeGreaterThanOrEqual(3);
      expect(ticks.length).toBeLessThanOrEqual(8);
      expect([...ticks].sort((a, b) => a - b)).toEqual(ticks);
      for (const figure of figures) {
        expect(figure).toBeGreaterThanOrEqual(range[0]);
        expect(figure).toBeLessThanOrEqual(range[1]);
      }
    },
  );

  test("figures that are not finite are left out", () => {
    expect(niceRange([Number.NaN, 4, Number.POSITIVE_INFINITY])).toEqual(niceRange([4]));
  });
});

test("a tick under a bar or a dot is left out", () => {
  const x = scaleFor([0, 0.4]);
  const ticks = [0, 0.1, 0.2, 0.3, 0.4].map((at) => ({ at }));
  const clear = clearTicks(ticks, [x(0.233), x(0.198)], x);
  expect(clear.map((tick) => tick.at)).toEqual([0, 0.1, 0.3, 0.4]);
});
