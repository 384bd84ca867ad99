import type { Entry } from "@roundbook/schemas";
import { describe, expect, it } from "vitest";
import { readAsset } from "./read-assets.ts";
import { readDefects } from "./read-defects.ts";
import { sealEntries } from "./seal-entries.ts";
import { BAD, GOOD, testEstate } from "./testing/estate.ts";

async function withDoor() {
  const estate = await testEstate();
  const asset = estate.newId();
  const seal = async (...entries: Entry[]) =>
    sealEntries(
      estate.ctx,
      estate.session,
      entries.map((entry) => estate.signed(entry)),
    );
  const open = async () => (await readDefects(estate.ctx, { open: true })).rows;
  await seal(estate.registered(asset, "4033", "2026-10-01"));
  return { ...estate, asset, seal, open };
}

describe("an entry of a day that has not come", () => {
  it("is sealed with a flag, and moves no due date past what the day it came allows", async () => {
    const { ctx, asset, seal, inspection } = await withDoor();
    const [outcome] = await seal({ ...(await inspection(asset, GOOD)), civilDate: "2036-10-13" });
    expect(outcome).toMatchObject({ outcome: "sealed", leaf: { flags: ["clock-differs"] } });
    // Received on 2026-10-13 at 09:40 UTC, when no place on Earth had a later day.
    expect((await readAsset(ctx, asset))?.due[0]).toMatchObject({
      lastDone: "2026-10-13",
      due: "2027-04-13",
    });
  });

  it("is not the latest word for ever: what is found afterwards counts", async () => {
    const { ctx, clock, asset, seal, inspection } = await withDoor();
    const ahead = { civilDate: "2036-10-13", happenedAt: "2036-10-13T08:00:00Z" };
    await seal({ ...(await inspection(asset, GOOD)), ...ahead });
    clock.now += 86_400_000;
    await seal(await inspection(asset, BAD, "2026-10-14"));
    expect((await readAsset(ctx, asset))?.due[0]).toMatchObject({
      lastDone: "2026-10-14",
      lastVerdict: "fail",
    });
  });

  it("retires nothing for ever", async () => {
    const { ctx, clock, asset, seal, entry } = await withDoor();
    await seal(entry("status-changed", asset, { status: "missing" }, "2036-01-01"));
    clock.now += 86_400_000;
    await seal(entry("status-changed", asset, { status: "in-service" }, "2026-10-14"));
    expect((await readAsset(ctx, asset))?.asset.status).toBe("in-service");
  });
});

it("a day that is the instant's in no zone is flagged, one across the date line is not", async () => {
  const { asset, seal, inspection } = await withDoor();
  const flags = async (civilDate: string, happenedAt: string) => {
    const [outcome] = await seal({ ...(await inspection(asset, GOOD)), civilDate, happenedAt });
    return outcome && "leaf" in outcome ? outcome.leaf.flags : outcome;
  };
  expect(await flags("2026-10-11", "2026-10-10T11:00:00Z")).toEqual([]);
  expect(await flags("2026-10-09", "2026-10-10T11:00:00Z")).toEqual([]);
  expect(await flags("2026-10-12", "2026-10-10T11:00:00Z")).toEqual(["clock-differs"]);
  expect(await flags("2026-10-08", "2026-10-10T11:00:00Z")).toEqual(["clock-differs"]);
});

describe("a step that arrives late", () => {
  const found = async () => {
    const door = await withDoor();
    await door.seal(await door.inspection(door.asset, BAD, "2026-10-05"));
    const defect = (await door.open())[0]?.id ?? "";
    const step = (name: string, day: string) =>
      door.entry("defect-step", door.asset, { defect, step: name }, day);
    return { ...door, step };
  };

  it("closes no defect that an inspection after it found again", async () => {
    const { asset, seal, open, step, inspection } = await found();
    await seal(await inspection(asset, BAD, "2026-10-07"));
    await seal(step("verified", "2026-10-06"));
    expect(await open()).toMatchObject([{ step: "raised" }]);
    await seal(step("verified", "2026-10-08"));
    expect(await open()).toEqual([]);
  });

  it("closes a defect whose point has passed since", async () => {
    const { asset, seal, open, step, inspection } = await found();
    await seal(await inspection(asset, GOOD, "2026-10-07"));
    await seal(step("verified", "2026-10-06"));
    expect(await open()).toEqual([]);
  });

  it("changes nothing of a defect that is verified, and hides no other of its point", async () => {
    const { ctx, asset, seal, open, step, inspection } = await found();
    await seal(step("verified", "2026-10-06"));
    await seal(await inspection(asset, BAD, "2026-10-08"));
    await seal(step("repaired", "2026-10-05"), await inspection(asset, BAD, "2026-10-09"));
    expect(await open()).toHaveLength(1);
    expect((await readDefects(ctx, {})).rows.map((row) => row.step)).toEqual([
      "verified",
      "raised",
    ]);
  });
});
