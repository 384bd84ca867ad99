import { describe, expect, test } from "vitest";
import { readAsset } from "./read-assets.ts";
import { readBundle } from "./read-bundle.ts";
import { readDefects } from "./read-defects.ts";
import { readDue } from "./read-due.ts";
import { readEntry } from "./read-history.ts";
import { receiveResult } from "./receive-result.ts";
import { Refusal } from "./refusal.ts";
import { MANAGER, outletEstate, SAMPLED, VALVES } from "./testing/outlet.ts";

type Outlet = Awaited<ReturnType<typeof outletEstate>>;

async function sampled() {
  const outlet = await outletEstate();
  const inspection = await outlet.inspection(SAMPLED, "2026-03-02");
  await outlet.seal(inspection);
  return { ...outlet, of: inspection.id };
}
const due = async ({ ctx, ref }: Outlet) =>
  (await readDue(ctx, { on: "2026-10-13" })).rows.find((row) => row.checklist === ref.id);
const defects = async ({ ctx }: Outlet) =>
  (await readDefects(ctx, {})).rows.map(({ point, title, step, by, raisedOn }) => [
    point,
    title,
    step,
    by,
    raisedOn,
  ]);

describe("an inspection whose sample is at the laboratory", () => {
  test("is pending: undecided, incomplete, and its due date has not moved", async () => {
    const outlet = await sampled();
    const found = await readEntry(outlet.ctx, outlet.of);
    expect(found?.leaf.judgement).toMatchObject({
      overall: "undecided",
      complete: false,
      pending: ["lead"],
    });
    expect(found).not.toHaveProperty("received");
    expect(await due(outlet)).toMatchObject({ lastDone: null, lastVerdict: "undecided" });
  });

  test("is judged again with the result, and done on its own day", async () => {
    const outlet = await sampled();
    const { ctx, of } = outlet;
    const [sealed] = await outlet.seal(outlet.result(of, 4, "2026-04-20"));
    expect(sealed).toMatchObject({ outcome: "sealed", leaf: { judgement: { overall: "pass" } } });
    expect(await due(outlet)).toMatchObject({
      lastDone: "2026-03-02",
      due: "2027-03-02",
      lastVerdict: "pass",
    });
    const found = await readEntry(ctx, of);
    expect(found?.leaf.judgement?.overall).toBe("undecided");
    expect(found?.received).toMatchObject({
      entries: [{ body: { of, result: { value: 4, unit: "ug/L" } } }],
      judgement: { overall: "pass", complete: true, pending: [] },
    });
  });

  test("raises a defect of its own day when the result is out of limits", async () => {
    const outlet = await sampled();
    await outlet.seal(outlet.result(outlet.of, 25, "2026-04-20"));
    expect(await defects(outlet)).toEqual([
      ["lead", "Lead in the water", "raised", "2026-03-09", "2026-03-02"],
    ]);
    expect(await due(outlet)).toMatchObject({ lastDone: "2026-03-02", lastVerdict: "fail" });
  });

  test("counts with the later of two results, both kept, and what was put right stays so", async () => {
    const outlet = await sampled();
    const { ctx, of, asset, estate } = outlet;
    await outlet.seal(outlet.result(of, 25, "2026-04-20"));
    const defect = `${of}:lead`;
    await outlet.seal(
      estate.entry("defect-step", asset, { defect, step: "verified" }, "2026-04-22"),
      outlet.result(of, 30, "2026-04-23"),
    );
    expect((await defects(outlet))[0]?.[2]).toBe("verified");
    await outlet.seal(
      outlet.result(of, 0.004, "2026-04-25", { result: { value: 0.004, unit: "mg/L" } }),
    );
    const received = (await readEntry(ctx, of))?.received;
    expect(received?.entries).toHaveLength(3);
    expect(received?.judgement.overall).toBe("pass");
    const came = await readEntry(ctx, received?.entries.at(-1)?.id ?? "");
    expect(received?.since).toBe(came?.leaf.seq);
    expect(came?.sample).toBe("B-17");
    expect(await due(outlet)).toMatchObject({ lastVerdict: "pass" });
    expect(await defects(outlet)).toHaveLength(1);
  });
});

test("a device gets the answers of the last complete inspection, its result included, to compare with", async () => {
  const outlet = await sampled();
  const { ctx, of, ref, estate } = outlet;
  const last = async () => {
    const bundle = await readBundle(ctx, estate.ids.site, "2026-10-13");
    return bundle?.lastResults.find(({ checklist }) => checklist === ref.id);
  };
  const previous = async () => (await last())?.previous;
  expect(await last()).toMatchObject({ on: "2026-03-02", awaited: true });
  expect(await previous()).toBeUndefined();
  await outlet.seal(outlet.result(of, 4, "2026-04-20"));
  expect(await previous()).toEqual({
    ...SAMPLED,
    lead: { sample: "B-17", result: { value: 4, unit: "ug/L" } },
  });
  expect(await last()).not.toHaveProperty("awaited");
});

describe("a result", () => {
  test("of nothing that was sampled, in a unit that does not convert, or of no inspection is told so", async () => {
    const outlet = await sampled();
    const { asset, estate, of } = outlet;
    const bad = (more: object) => outlet.result(of, 4, "2026-04-20", more);
    const door = estate.newId();
    await outlet.seal(estate.registered(door, "2"));
    const outcomes = await outlet.seal(
      bad({ point: "flow" }),
      bad({ point: "lead@hot" }),
      bad({ result: { value: 4, unit: "mm" } }),
      bad({ of: estate.newId() }),
      estate.entry("result-received", door, {
        of,
        point: "lead",
        result: { value: 1, unit: "ug/L" },
      }),
      bad({ reportedOn: "2026-02-30" }),
    );
    const told = outcomes.map((one) =>
      "problems" in one
        ? [one.outcome, one.problems[0]?.pointer, one.problems[0]?.code]
        : one.outcome,
    );
    expect(told).toEqual([
      ["refused", "/entry/body/point", "not-a-sample"],
      ["refused", "/entry/body/point", "not-a-sample"],
      ["refused", "/entry/body/result/unit", "unit-not-convertible"],
      ["retry-later", "/entry/body/of", "unknown-entry"],
      ["refused", "/entry/body/of", "entry-of-other-asset"],
      ["refused", "/entry/body/reportedOn", "no-such-date"],
    ]);
    expect((await readAsset(outlet.ctx, asset))?.asset.id).toBe(asset);
  });

  test("is taken in at the desk by whoever is signed in, with a note beside the log", async () => {
    const outlet = await sampled();
    const { ctx, of, estate } = outlet;
    const by = MANAGER(estate);
    const given = { point: "lead", result: { value: 12, unit: "ug/L" }, note: "Bottle was warm" };
    const { id, judgement } = await receiveResult(ctx, by, of, given);
    expect(judgement.overall).toBe("fail");
    const entry = await readEntry(ctx, id);
    expect(Object.values(entry?.contents ?? {})).toEqual(["Bottle was warm"]);
    expect(entry?.entry.author).toBe(by.person);
    const wrong = receiveResult(ctx, by, of, { ...given, point: "flow" });
    await expect(wrong).rejects.toMatchObject({
      code: "result-not-right",
      problems: [{ pointer: "/point", code: "not-a-sample" }],
    });
    await expect(receiveResult(ctx, by, estate.newId(), given)).rejects.toBeInstanceOf(Refusal);
  });
});

describe("a point of a repeat", () => {
  test("raises a defect of its member, called by its title, open until that one is verified", async () => {
    const outlet = await outletEstate();
    const { estate, asset } = outlet;
    const failing = await outlet.inspection({ ...VALVES, "valve@cold": "not-ok" }, "2026-03-02");
    await outlet.seal(failing);
    expect(await defects(outlet)).toEqual([
      ["valve@cold", "Valve closes?, Cold valve", "raised", null, "2026-03-02"],
    ]);
    const step = { defect: `${failing.id}:valve@cold`, step: "verified" };
    const [sealed] = await outlet.seal(estate.entry("defect-step", asset, step, "2026-03-03"));
    expect(sealed?.outcome).toBe("sealed");
    expect((await defects(outlet))[0]?.[2]).toBe("verified");
  });
});
