import { expect, test } from "vitest";
import { addPlace } from "../usecases/add-place.ts";
import { testEstate } from "../usecases/testing/estate.ts";
import { scopeOf } from "./due.ts";

test("site, place, type and keeper are named as people call them, or by their ids", async () => {
  const { ctx, ids } = await testEstate();
  const { site, person } = ids;
  expect(
    await scopeOf(ctx, {
      site: "1",
      place: "Ferry Hall",
      type: "Fire door",
      keeper: "Dag Ruskeen",
    }),
  ).toEqual({ site, place: site, assetType: "door", keeper: person });
  expect(await scopeOf(ctx, { site, place: site, type: "door", keeper: person })).toEqual({
    site,
    place: site,
    assetType: "door",
    keeper: person,
  });
  expect(await scopeOf(ctx, {})).toEqual({});
});

test("a name that nothing has is told with those that there are, one that two have with their ids", async () => {
  const { ctx, ids, session } = await testEstate();
  await expect(scopeOf(ctx, { type: "Ladder" })).rejects.toThrow(
    "there is no type Ladder; there are: Fire door",
  );
  await expect(scopeOf(ctx, { keeper: "Nobody" })).rejects.toThrow(
    "there is no keeper Nobody; there are: Dag Ruskeen",
  );
  const name = { parent: null, level: "site", name: "Ferry Hall", zone: "Europe/London" } as const;
  const { id: place } = await addPlace(ctx, session, { ...name, code: "2" });
  await expect(scopeOf(ctx, { site: "Ferry Hall" })).rejects.toThrow(
    `--site Ferry Hall is more than one: say which by its id: ${ids.site} (1 Ferry Hall), ${place} (2 Ferry Hall)`,
  );
});
