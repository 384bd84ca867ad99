import type { Explanation, Result } from "../shared/problem.ts";
import type { Unit } from "../units/unit.ts";

export type Scalar = number | string | boolean;
export type ScalarType = "number" | "string" | "boolean";

/**
 * Why a formula or a table gave no value; the codes and parameters are `FAILURE_CODES`. It is an
 * outcome, never replaced by a default.
 */
export type Failure = Explanation;

export interface NameType {
  readonly type: ScalarType;
  /** UCUM unit; absent for a plain number, which takes the unit of what it is added to. */
  readonly unit?: Unit;
  /** The only texts it can be, where they are known. */
  readonly options?: readonly string[];
}

/** By full name: `asset.length`, `answers.flow`, `joints`. */
export type NameTypes = ReadonlyMap<string, NameType>;

/**
 * What names stand for at evaluation; numbers in the units their definitions give. Objects have
 * a null prototype. A failure stands for a name whose own value could not be had.
 */
export interface FormulaContext {
  readonly asset: Readonly<Record<string, Scalar | Failure | undefined>>;
  readonly answers: Readonly<Record<string, Scalar | Failure | undefined>>;
  readonly values: Readonly<Record<string, Scalar | Failure | undefined>>;
}

/** What the place of a formula needs it to come out as. */
export interface Expected {
  readonly type?: ScalarType;
  readonly unit?: Unit;
}

export interface CompiledFormula {
  readonly source: string;
  readonly type: ScalarType;
  /** Null for plain numbers and for anything but a number. */
  readonly unit: Unit | null;
  /** Full names it reads, each once, in order of appearance. */
  readonly names: readonly string[];
  /** Never throws on user data; `isFailure` tells the outcomes apart. */
  evaluate(context: FormulaContext): Scalar | Failure;
  /** The arithmetic with numbers in place of names, such as "0.1 + 10 × 0.0133". */
  working(context: FormulaContext): string;
}

export interface FormulaEngine {
  /**
   * Reads and checks a formula. Problems have the pointer "" and, where they have a place in the
   * text, `start` and `end` (UTF-16 offsets).
   */
  compile(source: string, names: NameTypes, expected?: Expected): Result<CompiledFormula>;
}

export const isFailure = (outcome: Scalar | Failure | undefined): outcome is Failure =>
  typeof outcome === "object";

export const failure = (code: string, params: Failure["params"]): Failure => ({ code, params });
