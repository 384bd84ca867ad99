import { describe, expect, test } from "vitest";
import { putAssetType } from "./put-asset-type.ts";
import { registerAsset } from "./register-asset.ts";
import { testEstate } from "./testing/estate.ts";

const type = (pattern: string) => ({
  assetType: "lock",
  title: "Lock",
  particulars: {
    code: { title: "Code", type: "string" as const, pattern },
    fitted: { title: "Date fitted", type: "string" as const, format: "date" as const },
  },
  checklists: [],
});

describe("a pattern of a particular", () => {
  test("that no engine runs in linear time is refused where it is written", async () => {
    const { ctx, session } = await testEstate();
    const put = putAssetType(ctx, session, "lock", type("^(a)\\1$"));
    await expect(put).rejects.toMatchObject({
      code: "asset-type-not-right",
      problems: [{ pointer: "/particulars/code/pattern", code: "pattern-refused" }],
    });
  });

  test("holds for every asset that is registered, and so does a date", async () => {
    const { ctx, session, ids } = await testEstate();
    await putAssetType(ctx, session, "lock", type("^[A-Z]{2}-\\d+$"));
    const lock = (particulars: Record<string, string>, number: string) =>
      registerAsset(ctx, session, {
        number,
        assetType: "lock",
        description: "Lock",
        place: ids.site,
        particulars,
      });
    await expect(lock({ code: "ab-1", fitted: "2026-02-30" }, "1")).rejects.toMatchObject({
      problems: [
        { pointer: "/particulars/code", code: "particular-pattern" },
        { pointer: "/particulars/fitted", code: "particular-no-such-day" },
      ],
    });
    expect(await lock({ code: "AB-1", fitted: "2026-02-28" }, "1")).toHaveProperty("id");
  });
});
