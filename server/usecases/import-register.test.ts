import { describe, expect, test } from "vitest";
import { importing } from "./import/testing/importing.ts";
import { readAsset } from "./read-assets.ts";
import { readPlaces } from "./read-register.ts";

describe("a register", () => {
  test("registers an asset a row, with its places made once", async () => {
    const { bring, register, ctx } = await importing();
    const file =
      "no,what,site,house\nD1,Front door,Ferry Hall,Hall\nD2,,Ferry Hall,Hall\nD3,Gate,Ice House,\n";
    expect(await bring(register(), file)).toMatchObject({ rows: 3, newAssets: 3, newEntries: 5 });
    const places = (await readPlaces(ctx)).map(({ level, name }) => [level, name]);
    expect(places).toEqual(
      expect.arrayContaining([
        ["site", "Ferry Hall"],
        ["building", "Hall"],
        ["site", "Ice House"],
      ]),
    );
    expect(places).toHaveLength(3);
    const found = await readAsset(ctx, "number:D2");
    expect(found?.asset).toMatchObject({ description: "Fire door", path: ["Ferry Hall", "Hall"] });
    expect(await bring(register(), file)).toMatchObject({ newEntries: 0, already: 3 });
  });

  test("names a number that stands twice in the file, however alike the rows are", async () => {
    const { bring, register } = await importing();
    const row = "Door,Ferry Hall,Hall";
    const report = await bring(register(), `no,what,site,house\nD1,${row}\nD2,${row}\nd1,${row}\n`);
    expect(report).toMatchObject({ newAssets: 2, badRows: 1 });
    const params = { number: "d1", row: 1 };
    expect(report.problems).toMatchObject([
      { row: 3, column: "no", problem: { code: "number-twice", params } },
    ]);
  });

  test("leaves an asset alone that has the number already with other content", async () => {
    const { bring, register } = await importing();
    const head = "no,what,site,house\n";
    await bring(register(), `${head}D1,Door,Ferry Hall,Hall\n`);
    const changed = await bring(register(), `${head}D1,Gate,Ferry Hall,Hall\n`);
    expect(changed.problems).toMatchObject([{ problem: { code: "same-key-other-content" } }]);
    const other = register({ source: "another list" });
    expect(await bring(other, `${head}D1,Door,Ferry Hall,Hall\n`)).toMatchObject({ already: 1 });
    const taken = await bring(other, `${head}D1,Gate,Ferry Hall,Hall\n`);
    expect(taken.problems).toMatchObject([{ column: "no", problem: { code: "number-taken" } }]);
  });

  test("brings dates forward that move the due date and prove nothing", async () => {
    const { bring, register, ctx, estate } = await importing();
    const date = { column: "done", format: "D MMM YYYY" } as const;
    const mapping = register({ broughtForward: [{ checklist: estate.ids.checklist, date }] });
    const file =
      "no,what,site,house,done\nD1,,Ferry Hall,,5 Sep 2026\nD2,,Ferry Hall,,31 Jun 2026\n";
    const report = await bring(mapping, file);
    expect(report).toMatchObject({ newAssets: 1, newEntries: 2, badRows: 1 });
    expect(report.problems).toMatchObject([
      { row: 2, column: "done", problem: { code: "date-no-such-day" } },
    ]);
    const found = await readAsset(ctx, "number:D1");
    expect(found?.due).toMatchObject([{ due: "2027-03-05", why: { code: "brought-forward" } }]);
  });

  test("refuses a mapping that this estate cannot follow, before any row", async () => {
    const { bring, register } = await importing();
    const asset = { number: "no", assetType: "dor", place: ["site"] };
    const report = await bring(register({ asset }), "no,site\nD1,Ferry Hall\n");
    expect(report).toMatchObject({ rows: 0, newEntries: 0 });
    expect(report.problems).toMatchObject([
      { row: 0, problem: { code: "unknown-asset-type", params: { known: ["door"] } } },
    ]);
  });
});
