import { afterAll, beforeAll, expect, it } from "vitest";
import { PACKAGES, type Planted, plant } from "./planted.ts";

let planted: Planted;
const check = (name: string) => planted.run("typescript/bin/tsc", ["--noEmit", "-p", name]);

beforeAll(() => {
  planted = plant({
    ...Object.fromEntries(
      PACKAGES.map((name) => [`${name}/wrong.ts`, "export const wrong: string = 1;\n"]),
    ),
    "schemas/ambient.ts": "export const ambient = [document, process, setTimeout];\n",
    "server/maybe.ts": "export const maybe: number = [1][0];\n",
  });
});

afterAll(() => planted.remove());

it.each(PACKAGES)("a wrong type in %s is an error", (name) => {
  const { status, output } = check(name);
  expect(status).not.toBe(0);
  expect(output).toContain("wrong.ts(1,14): error TS2322");
});

it("schemas knows neither the browser nor Node", () => {
  const { output } = check("schemas");
  for (const name of ["document", "process", "setTimeout"]) {
    expect(output).toContain(`Cannot find name '${name}'`);
  }
});

it("an element that may be missing is not taken for present", () => {
  expect(check("server").output).toContain("maybe.ts(1,14): error TS2322");
});
