/** Rules that no single case can express, each with the test that holds it, from this folder. */
export const NOT_BY_CASE: Readonly<Record<string, string>> = {
  "1.3": "../checklist/issued-validators.test.ts",
  "1.5": "../checklist/issue-document.test.ts",
  "1.7": "../checklist/reused-points.test.ts",
  "6.12": "../judge/properties.test.ts",
  "9.9": "../checklist/lint-checklist.test.ts",
  "9.14": "../checklist/lint-checklist.test.ts",
  "10.5": "../judge/properties.test.ts",
  "10.6": "../judge/judge.test.ts",
  "10.7": "../fuzz/language.test.ts",
  "12.1": "../checklist/worded.test.ts",
  "12.2": "../checklist/worded-judgement.test.ts",
  "13.1": "../checklist/resolve-blocks.test.ts",
  "13.2": "../checklist/resolve-blocks.test.ts",
  "13.3": "../checklist/resolve-blocks.test.ts",
};
