import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { STARTERS } from "@roundbook/schemas/starters";
import { describe, expect, test } from "vitest";
import { tempFolder } from "../store/testing/temp-store.ts";
import { commandLineOf } from "./testing/run.ts";

describe("starters on the command line", () => {
  test("are listed with what each is for, and need no estate", async () => {
    const { status, out } = await commandLineOf()(["starters", "--json"]);
    expect(status).toBe(0);
    expect(out.map((line) => JSON.parse(line).key)).toEqual(STARTERS.map(({ key }) => key));
  });

  test("are printed as the document that issuing reads, and nothing stands in the way of any", async () => {
    const folder = tempFolder();
    const run = commandLineOf(join(folder, "data"));
    const file = join(folder, "starter.json");
    for (const { key } of STARTERS) {
      writeFileSync(file, (await run(["starter", key])).out.join("\n"));
      const issued = await run(["issue", file, "--json"]);
      expect([key, issued.err, issued.status]).toEqual([key, [], 0]);
    }
  });

  test("of an unknown key are told by the keys there are", async () => {
    const { status, out, err } = await commandLineOf()(["starter", "boat"]);
    expect([status, out]).toEqual([2, []]);
    expect(err[0]).toContain("fire-door");
  });
});
