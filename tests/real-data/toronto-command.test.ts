import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCli } from "../../server/cli/run.ts";
import { ASSET_TYPE, CHECKLIST, FIRST_SITE, INTERVAL } from "./toronto/checklist.ts";
import { CITY_FILE, isThere } from "./toronto/city-file.ts";
import { MAPPING } from "./toronto/mapping.ts";

describe.skipIf(!isThere)("the city's evaluations through the command line", () => {
  const folder = mkdtempSync(join(tmpdir(), "roundbook-city-command-"));
  let imported: Record<string, unknown>;

  const run = async (...args: string[]) => {
    const out: string[] = [];
    const err: string[] = [];
    const status = await runCli(args, {
      stdin: (async function* () {})(),
      out: async (line) => void out.push(line),
      err: (line) => void err.push(line),
      data: join(folder, "data"),
      clock: () => Date.now(),
    });
    if (status !== 0) throw new Error(err.join("\n"));
    return out.map((line) => JSON.parse(line));
  };
  const file = (name: string, content: unknown) => {
    writeFileSync(join(folder, name), JSON.stringify(content));
    return join(folder, name);
  };

  beforeAll(async () => {
    await run("site", file("site.json", FIRST_SITE), "--json");
    const [issued] = await run("issue", file("checklist.json", CHECKLIST), "--json");
    await run("asset-type", file("type.json", ASSET_TYPE(issued.id)), "--json");
    await run("interval", file("interval.json", INTERVAL(issued.id)), "--json");
    const map = file("map.json", MAPPING(issued.id));
    [imported] = await run("import", CITY_FILE, "--map", map, "--json");
  }, 120_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test("imports every row", () => {
    expect(imported).toMatchObject({ rows: 9758, newAssets: 3480, badRows: 0, problems: [] });
  });

  test("lists what is due in lines, each under the building's own number", async () => {
    const rows = await run("due", "--on", "2022-01-20", "--json");
    expect(rows).toHaveLength(3480);
    expect(rows.filter(({ status }) => status === "overdue")).toHaveLength(243);
    const overdue = await run("due", "--on", "2022-01-20", "--status", "overdue", "--json");
    expect(overdue).toHaveLength(243);
    // Straight to an audit is due on the day done, and never out of the list.
    const atOnce = rows.filter(({ why }) => why.startsWith("at once"));
    expect(atOnce).toHaveLength(16);
    expect(atOnce.every(({ due, lastDone }) => due === lastDone)).toBe(true);
  });

  test("tells a building's history with the oldest first", async () => {
    const rows = await run("history", "4155564", "--json");
    const inspections = rows.filter(({ kind }) => kind === "inspection");
    expect(inspections.map(({ date, scores }) => [date, scores.score])).toEqual([
      ["2018-01-08", 58],
      ["2019-02-04", 81],
      ["2019-11-19", 71],
      ["2021-10-19", 84],
      ["2021-12-28", 58],
    ]);
  });

  test("rebuilds from every entry and exports them in order", async () => {
    const exported = await run("export", "--json");
    expect(exported.map(({ leaf }) => leaf.seq)).toEqual(exported.map((_, index) => index + 1));
    const [rebuilt] = await run("rebuild", "--json");
    expect(rebuilt.entries).toBe(exported.length);
  }, 120_000);
});
