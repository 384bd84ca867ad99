import { afterAll, beforeAll, expect, it } from "vitest";
import { type Planted, plant } from "./planted.ts";

const PROJECTS = ["schemas", "server", "runner", "designer", "tests", "tests/journeys"];
const head = 'import { expect, it, vi } from "vitest";\n';
const loud = `${head}it("loud", () => { console.error("boom"); expect(1).toBe(1); });\n`;
const expected = `${head}it("expected", () => {
  const spy = vi.spyOn(console, "error").mockImplementation(() => {});
  console.error("boom");
  expect(spy).toHaveBeenCalledOnce();
  spy.mockRestore();
});\n`;

let planted: Planted;
let results: { name: string; status: string; failureMessages: string[] }[];

beforeAll(() => {
  planted = plant({
    ...Object.fromEntries(PROJECTS.map((folder) => [`${folder}/loud.test.ts`, loud])),
    "schemas/expected.test.ts": expected,
  });
  const { output } = planted.run("vitest/vitest.mjs", ["run", "--reporter=json"]);
  const report = JSON.parse(
    output.slice(output.indexOf('{"numTotalTestSuites"')).split("\n")[0] ?? "",
  );
  results = report.testResults.flatMap(
    (file: { name: string; assertionResults: { status: string; failureMessages: string[] }[] }) =>
      file.assertionResults.map((result) => ({ ...result, name: file.name })),
  );
});

afterAll(() => planted.remove());

it.each(PROJECTS)("a test in %s that writes an error to the console fails", (folder) => {
  const result = results.find(({ name }) => name.endsWith(`/${folder}/loud.test.ts`));
  expect(result?.status).toBe("failed");
  expect(result?.failureMessages.join()).toContain("unexpected console.error: boom");
});

it("a test that expects the error and says so passes", () => {
  const result = results.find(({ name }) => name.endsWith("/schemas/expected.test.ts"));
  expect(result?.status).toBe("passed");
});
