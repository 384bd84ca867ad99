import "fake-indexeddb/auto";
import type { AssetRow } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { openDevice } from "./database.ts";
import {
  claimNumber,
  keepBlock,
  leftIn,
  loadNumbers,
  proposeNumber,
  scopeOf,
  seriesOf,
} from "./number-blocks.ts";

const asset = (number: string, assetType = "lead") => ({ number, assetType }) as AssetRow;

describe("the series a type is numbered in", () => {
  test("is the commonest prefix among its own, with the highest number of the site", () => {
    const assets = ["4033", "4037", "A-900"].map((number) => asset(number));
    expect(seriesOf([...assets, asset("4099", "door")], "lead")).toEqual({
      prefix: "",
      value: 4099,
      width: 4,
    });
    expect(seriesOf([...assets, asset("FD-009", "door")], "door")).toEqual({
      prefix: "FD-",
      value: 9,
      width: 3,
    });
  });

  test("of a type without assets is that of the site, and of an empty site begins at 1", () => {
    expect(seriesOf([asset("FD-009", "door")], "lead").prefix).toBe("FD-");
    expect(seriesOf([asset("no digits")], "lead")).toEqual({ prefix: "", value: 0, width: 1 });
  });
});

describe("the number that is proposed", () => {
  const series = { prefix: "FD-", value: 9, width: 3 };
  const scope = scopeOf("site", "FD-");
  const block = { id: 1, first: 12, last: 14, next: 12 };

  test("is the next that is kept for this device and that nothing bears, its zeros kept", () => {
    const taken = (number: string) => number === "FD-012";
    expect(proposeNumber("site", series, { [scope]: [block] }, taken)).toEqual({
      number: "FD-013",
      leased: { scope, value: 13 },
    });
  });

  test("without a lease for this site is simply the next, and says that nothing is kept", () => {
    const kept = { [scopeOf("other", "FD-")]: [block] };
    const taken = (number: string) => number === "FD-010";
    expect(proposeNumber("site", series, kept, taken)).toEqual({ number: "FD-011", leased: null });
    const used = { [scope]: [{ ...block, next: 15 }] };
    expect(proposeNumber("site", series, used, () => false).leased).toBeNull();
  });
});

describe("numbers kept for a device", () => {
  test("are given out once: of two tabs that propose one number, one is told", async () => {
    const database = await openDevice("numbers-1");
    await keepBlock(database, "d", "s ", { id: 1, first: 5, last: 6 });
    const claims = [1, 2].map(() => claimNumber(database, "d", { scope: "s ", value: 5 }));
    expect((await Promise.all(claims)).sort()).toEqual([false, true]);
    expect(await claimNumber(database, "d", { scope: "s ", value: 6 })).toBe(true);
    expect(await claimNumber(database, "d", { scope: "s ", value: 7 })).toBe(false);
    expect(leftIn((await loadNumbers(database, "d"))["s "] ?? [])).toBe(0);
  });

  test("a block that arrives twice is kept once, and belongs to one device key only", async () => {
    const database = await openDevice("numbers-2");
    await keepBlock(database, "d", "s ", { id: 1, first: 5, last: 6 });
    await claimNumber(database, "d", { scope: "s ", value: 5 });
    await keepBlock(database, "d", "s ", { id: 1, first: 5, last: 6 });
    expect((await loadNumbers(database, "d"))["s "]).toEqual([
      { id: 1, first: 5, last: 6, next: 6 },
    ]);
    expect(await loadNumbers(database, "of another person")).toEqual({});
  });

  test("what is used up goes once there is more, and the newest tells what was seen", async () => {
    const database = await openDevice("numbers-3");
    await keepBlock(database, "d", "s ", { id: 1, first: 5, last: 5 });
    await claimNumber(database, "d", { scope: "s ", value: 5 });
    expect((await loadNumbers(database, "d"))["s "]?.at(-1)?.id).toBe(1);
    await keepBlock(database, "d", "s ", { id: 4, first: 9, last: 9 });
    expect((await loadNumbers(database, "d"))["s "]?.map(({ id }) => id)).toEqual([4]);
  });
});
