import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { tempFolder } from "../store/testing/temp-store.ts";
import { LADDER } from "../usecases/demo/checklists/ladder.ts";
import { commandLineOf } from "./testing/run.ts";

const gap = {
  $ref: "#/$defs/reading",
  title: "Gap",
  quantity: { unit: "mm" },
  limits: [{ min: 1, max: 5 }],
  ask: { when: "1 > 2" },
};

test("issuing tells what the designer had better look at, on standard error and in the answer", async () => {
  const folder = tempFolder();
  const run = commandLineOf(join(folder, "data"));
  const file = (title: string) => {
    const properties = { ...(LADDER.properties as object), gap };
    writeFileSync(join(folder, "one.json"), JSON.stringify({ ...LADDER, title, properties }));
    return join(folder, "one.json");
  };
  const { status, out, err } = await run(["issue", file("Ladder"), "--json"]);
  expect(status).toBe(0);
  expect(err).toContain("warning: /properties/gap/ask/when: the point is never asked");
  const { issue, warnings } = JSON.parse(out[0] ?? "");
  expect([issue, warnings]).toEqual([
    1,
    expect.arrayContaining([
      expect.objectContaining({ pointer: "/properties/gap/limits/0", code: "limit-without-basis" }),
    ]),
  ]);
  const blank = await run(["issue", file("  ")]);
  expect([blank.status, blank.out, blank.err[0]]).toEqual([
    2,
    [],
    expect.stringContaining("/title: nothing but blanks"),
  ]);
});
