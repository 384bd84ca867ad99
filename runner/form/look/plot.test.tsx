import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { Plot, type PlotReading } from "./plot.tsx";

const reading = (day: number, value: number, more: Partial<PlotReading> = {}): PlotReading => ({
  day,
  value,
  outside: false,
  min: 60,
  max: null,
  issue: 1,
  ...more,
});
const drawn = (readings: readonly PlotReading[], gaps: { from: number; to: number }[] = []) =>
  renderToStaticMarkup(
    <Plot
      {...{ readings, gaps }}
      days={[{ day: 0, label: "Oct 2025" }]}
      print={(value) => value.toFixed(1)}
      sayStep={(side, { issue }, now) => (now ? side : `${side} by issue ${issue}`)}
      label="Flow temperature"
      wide
    />,
  );

it("says what it draws", () => {
  expect(drawn([reading(0, 64), reading(30, 63)])).toContain('aria-label="Flow temperature"');
});

it("what was beyond the limit is a diamond, and what lies only below a figure is no dot", () => {
  const page = drawn([
    reading(0, 64),
    reading(30, 58, { outside: true }),
    reading(60, 61, { open: "below" }),
  ]);
  expect(page.match(/plot-dot/g)).toHaveLength(1);
  expect(page.match(/plot-open/g)).toHaveLength(1);
});

it("the limit of the time is told by its issue where another came after it", () => {
  const page = drawn([reading(0, 64, { min: 55, issue: 3 }), reading(200, 63), reading(400, 63)]);
  expect(page).toContain("min by issue 3");
});

it("time without a reading breaks the axis", () => {
  expect(drawn([reading(0, 64), reading(90, 63)], [{ from: 30, to: 60 }])).toContain("plot-break");
  expect(drawn([reading(0, 64), reading(90, 63)])).not.toContain("plot-break");
});

it("a reading without limits is drawn all the same", () => {
  expect(drawn([reading(0, 0, { min: null })])).toContain("plot-dot");
});
