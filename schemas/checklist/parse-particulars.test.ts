import { expect, it } from "vitest";
import { createPatternEngine } from "../patterns/index.ts";
import type { ParticularDefinitions } from "./meta-schema.ts";
import { parseParticulars } from "./parse-particulars.ts";

it("particulars keep to their definitions; one that is not given is no problem", () => {
  const definitions = {
    length: { title: "Length", type: "number" as const, unit: "m", minimum: 0.5, maximum: 100 },
    class: { title: "Class", enum: ["I", "II"] },
    rungs: { title: "Rungs", type: "integer" as const },
  };
  const codes = (values: Record<string, unknown>) =>
    parseParticulars(definitions, values).map(({ pointer, code }) => `${pointer} ${code}`);
  expect(codes({})).toEqual([]);
  expect(codes({ length: 0.5, class: "I", rungs: 3 })).toEqual([]);
  expect(codes({ length: "10", class: "III", rungs: 2.5, constructor: 1 })).toEqual([
    "/length particular-wrong-type",
    "/class particular-not-allowed",
    "/rungs particular-wrong-type",
    "/constructor unknown-particular",
  ]);
  expect(codes({ length: 100.1 })).toEqual(["/length particular-too-large"]);
});

it("a text keeps to its pattern and its length, and a date is a day that exists", () => {
  const definitions: ParticularDefinitions = {
    tag: { title: "Tag", type: "string", pattern: "^[A-Z]{2}-\\d+$", maxLength: 8 },
    fitted: { title: "Fitted on", type: "string", format: "date" },
  };
  const engine = createPatternEngine();
  const codes = (values: Record<string, unknown>) =>
    parseParticulars(definitions, values, engine).map(({ pointer, code }) => `${pointer} ${code}`);
  expect(codes({ tag: "AB-12", fitted: "2024-02-29" })).toEqual([]);
  expect(codes({ tag: "AB12", fitted: "2026-02-29" })).toEqual([
    "/tag particular-pattern",
    "/fitted particular-no-such-day",
  ]);
  expect(codes({ tag: "AB-1234567" })).toEqual(["/tag particular-too-long"]);
  expect(codes({ fitted: 20260101 })).toEqual(["/fitted particular-wrong-type"]);
  expect(parseParticulars(definitions, { tag: "AB12" })).toEqual([]);
});
