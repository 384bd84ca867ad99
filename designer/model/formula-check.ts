import {
  compileFormula,
  type FormulaEngine,
  type NameTypes,
  type Problem,
  unitOf,
} from "@roundbook/schemas";
import { readBound } from "./limit-edit.ts";

/** What a formula has to come out as: true or false, or a number in a unit. */
export type Wanted = { readonly condition: true } | { readonly unit: string | undefined };

/** A formula while it is typed. Offsets are places in the text as typed. */
export type Checked =
  | { readonly state: "nothing" | "figure" | "waiting" }
  | { readonly state: "sound"; readonly unit: string | null }
  | {
      readonly state: "wrong";
      readonly problem: Problem;
      readonly start: number;
      readonly end: number;
      /** What was probably meant in that place. */
      readonly nearest: string | null;
    };

const whole = (value: unknown, otherwise: number): number =>
  typeof value === "number" ? value : otherwise;

/** Without the engine, which is fetched when a formula is first typed, one is still waited for. */
export const checkFormula = (
  text: string,
  names: NameTypes,
  wanted: Wanted,
  engine: FormulaEngine | undefined,
): Checked => {
  const bound = readBound(text);
  if (bound === undefined) return { state: "nothing" };
  if (typeof bound === "number" && !("condition" in wanted)) return { state: "figure" };
  if (!engine) return { state: "waiting" };
  const unit = "unit" in wanted && wanted.unit ? unitOf(wanted.unit) : undefined;
  const expected =
    "condition" in wanted
      ? { type: "boolean" as const }
      : { type: "number" as const, ...(unit ? { unit } : {}) };
  const compiled = compileFormula(text, names, expected, engine);
  if (compiled.ok) return { state: "sound", unit: compiled.value.unit?.code ?? null };
  const [problem] = compiled.problems;
  if (!problem) return { state: "waiting" };
  const { start, end, nearest } = problem.params;
  return {
    state: "wrong",
    problem,
    start: whole(start, 0),
    end: whole(end, text.length),
    nearest: typeof nearest === "string" && nearest !== "" ? nearest : null,
  };
};

/** The text with what was probably meant in the place that is wrong. */
export const mended = (text: string, { start, end, nearest }: Checked & { state: "wrong" }) =>
  nearest === null ? text : text.slice(0, start) + nearest + text.slice(end);
