import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { tempFolder } from "../store/testing/temp-store.ts";
import { commandLineOf } from "./testing/run.ts";

describe("the command line", () => {
  test("answers an unknown verb or flag with how it is used, on standard error", async () => {
    const run = commandLineOf();
    const asked = [
      ["count"],
      [],
      ["due", "--when", "2026-01-01"],
      ["due", "--on", "2026-02-31"],
      ["due", "--status", "late"],
      ["history"],
      ["history", "1", "2"],
      ["import", "file.csv"],
      ["issue", "checklist.json", "--id", "7"],
    ];
    for (const args of asked) {
      const { status, out, err } = await run(args);
      expect([args, status, out]).toEqual([args, 2, []]);
      expect(err.join("\n")).toContain("usage: ");
    }
  });

  test("does not take a mistyped folder for an estate with nothing due", async () => {
    const { status, out, err } = await commandLineOf()(["due", "--on", "2026-01-01", "--json"]);
    expect([status, out]).toEqual([2, []]);
    expect(err[0]).toContain("there is no estate in");
  });

  test("names a file that is not there, is not JSON, or does not fit", async () => {
    const folder = tempFolder();
    const run = commandLineOf();
    const file = (name: string, text: string) => {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    };
    const missing = await run(["issue", join(folder, "none.json")]);
    expect([missing.status, missing.err[0]]).toEqual([2, expect.stringContaining("none.json")]);
    const broken = await run(["issue", file("broken.json", "{")]);
    expect([broken.status, broken.err]).toEqual([2, ["this is not JSON, at line 1, column 2"]]);
    const other = await run(["place", file("place.json", '{"level":"site"}')]);
    expect([other.status, other.err]).toEqual([
      2,
      ["parent is missing", "code is missing", "name is missing"],
    ]);
  });

  test("enters what it makes under a name of its own, made once", async () => {
    const folder = tempFolder();
    const run = commandLineOf(join(folder, "data"));
    for (const name of ["Ferry Hall", "Ice House"]) {
      const place = { parent: null, level: "site", code: name, name, zone: "Europe/London" };
      writeFileSync(join(folder, "place.json"), JSON.stringify(place));
      expect((await run(["site", join(folder, "place.json"), "--json"])).status).toBe(0);
    }
    const { out } = await run(["export", "--json"]);
    const entries = out.map((line) => JSON.parse(line).entry);
    expect(entries.map(({ kind }) => kind)).toEqual(["person-added", "place-added", "place-added"]);
    expect(new Set(entries.map(({ author }) => author))).toEqual(new Set([entries[0].body.person]));
    expect(JSON.parse(out[0] ?? "").contents[entries[0].body.name.commit]).toBe("Command line");
  });
});
