/** Rules that no single case can express, each with the test that holds it, from this folder. */
export const NOT_BY_CASE: Readonly<Record<string, string>> = {
  "1.3": "./order-and-validity.test.ts",
  "1.5": "../checklist/issue-document.test.ts",
  "1.7": "../checklist/reused-points.test.ts",
  "6.12": "../judge/properties.test.ts",
  "9.14": "../../runner/form/checklist-form.test.tsx",
  "10.5": "../judge/properties.test.ts",
  "10.6": "../judge/judge.test.ts",
  "10.7": "./order-and-validity.test.ts",
  "12.1": "../checklist/worded.test.ts",
  "12.2": "../checklist/worded-judgement.test.ts",
  "13.1": "../checklist/resolve-blocks.test.ts",
  "13.2": "../checklist/resolve-blocks.test.ts",
  "13.3": "../checklist/resolve-blocks.test.ts",
};
