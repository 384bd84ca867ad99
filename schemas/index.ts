/** The one door of the core: pure, without clock, randomness, input/output or locale. */
export * from "./checklist/answer-types.ts";
export * from "./checklist/meta-schema.ts";
export * from "./due/interval-schema.ts";
export * from "./due/window.ts";
export * from "./judge/judgement.ts";
export * from "./log/bodies.ts";
export * from "./log/entry.ts";
export * from "./shared/ids.ts";
export * from "./shared/patterns.ts";
export * from "./shared/problem.ts";
export * from "./wire/accounts.ts";
export * from "./wire/design.ts";
export * from "./wire/entries.ts";
export * from "./wire/import.ts";
export * from "./wire/register.ts";
