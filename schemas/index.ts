/** The one door of the core: pure, without clock, randomness, input/output or locale. */
export * from "./checklist/answer-types.ts";
export * from "./checklist/guards.ts";
export * from "./checklist/issue-document.ts";
export * from "./checklist/lint-checklist.ts";
export * from "./checklist/meta-schema.ts";
export * from "./checklist/names.ts";
export * from "./checklist/parse-particulars.ts";
export * from "./checklist/particulars-in-order.ts";
export * from "./checklist/points-in-order.ts";
export * from "./checklist/reused-points.ts";
export * from "./checklist/validate-answers.ts";
export * from "./due/civil.ts";
export * from "./due/codes.ts";
export * from "./due/compute-window.ts";
export * from "./due/duration.ts";
export * from "./due/interval-schema.ts";
export * from "./due/latest-day.ts";
export * from "./due/window.ts";
export * from "./formulas/compile.ts";
export * from "./formulas/engine-type.ts";
export * from "./formulas/reserved.ts";
export { JUDGE_CODES, JUDGE_PROBLEM_CODES, type JudgeCode } from "./judge/codes.ts";
export {
  compileJudge,
  ENGINE,
  type Judge,
  type JudgeOptions,
} from "./judge/compile-judge.ts";
export * from "./judge/counts-as-done.ts";
export * from "./judge/judgement.ts";
export type { JudgeInput } from "./judge/run.ts";
export * from "./log/bodies.ts";
export * from "./log/bytes.ts";
export * from "./log/canonical.ts";
export * from "./log/entry.ts";
export * from "./log/hashing.ts";
export * from "./log/merkle.ts";
export * from "./log/proofs.ts";
export * from "./shared/codes/checklist-codes.ts";
export * from "./shared/codes/desk-codes.ts";
export * from "./shared/codes/failure-codes.ts";
export * from "./shared/codes/import-codes.ts";
export * from "./shared/codes/lint-codes.ts";
export * from "./shared/codes.ts";
export * from "./shared/ids.ts";
export * from "./shared/nearest.ts";
export * from "./shared/patterns.ts";
export * from "./shared/problem.ts";
export * from "./shared/significant.ts";
export * from "./tables/analyse.ts";
export * from "./tables/look-up.ts";
export * from "./units/unit.ts";
export * from "./units/units.ts";
export * from "./wire/accounts.ts";
export * from "./wire/design.ts";
export * from "./wire/entries.ts";
export * from "./wire/import.ts";
export * from "./wire/register.ts";
