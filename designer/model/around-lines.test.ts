import { expect, test } from "vitest";
import {
  printBands,
  printParticulars,
  printValues,
  readBands,
  readParticulars,
  readValues,
} from "./around-lines.ts";

const read = <T>(lines: { ok: true; value: T } | { ok: false; line: number }): T => {
  if (!lines.ok) throw new Error(`line ${lines.line}`);
  return lines.value;
};

test("particulars are read from lines and printed as the same lines", () => {
  const text =
    "length: Length, m\ncsa: Cross-section, 0.75 / 1 / 1.5\nclass: Class, I / II\nmaker: Maker";
  const made = read(readParticulars(text));
  expect(made.length).toMatchObject({ title: "Length", type: "number", unit: "m" });
  expect(made.csa?.enum).toEqual([0.75, 1, 1.5]);
  expect(made.class?.enum).toEqual(["I", "II"]);
  expect(printParticulars(made)).toBe(text);
});

test("a unit over a unit is a unit, not a choice", () => {
  expect(read(readParticulars("r: Resistance per metre, Ohm/m")).r?.unit).toBe("Ohm/m");
});

test("values are constants or formulas, and a table stays as it is", () => {
  const table = {
    r: { unit: "Ohm/m", table: { policy: "unique" as const, inputs: ["asset.csa"], rules: [] } },
  };
  const text = "joints = 0.1 Ohm\nlimit = joints + asset.length * r in Ohm\nr = table of 0 rules";
  const made = read(readValues(text, table));
  expect(made.joints).toEqual({ const: 0.1, unit: "Ohm" });
  expect(made.limit).toEqual({ formula: "joints + asset.length * r", unit: "Ohm" });
  expect(made.r).toEqual(table.r);
  expect(printValues(made)).toBe(text);
});

test("bands are sorted from the highest and printed as they are read", () => {
  const made = read(
    readBands("0: Look again, fail, at once\n86: Three years, pass, 3 years\n51: One year, 1 year"),
  );
  expect(made.map(({ from, next }) => [from, next])).toEqual([
    [86, "P3Y"],
    [51, "P1Y"],
    [0, "at-once"],
  ]);
  expect(printBands(made).split("\n")[0]).toBe("86: Three years, pass, 3 years");
});

test("a line that is not understood is named, not guessed at", () => {
  expect(readParticulars("Length in m")).toEqual({ ok: false, line: 1, text: "Length in m" });
  expect(readValues("a = 1\na = 2", {})).toMatchObject({ ok: false, line: 2 });
  expect(readBands("86: Three years, pass, soon")).toMatchObject({ ok: false, line: 1 });
});
