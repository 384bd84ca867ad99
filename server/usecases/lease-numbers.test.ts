import { expect, it } from "vitest";
import { appendEntries } from "./append-entries.ts";
import { leaseNumbers } from "./lease-numbers.ts";
import { rebuild } from "./rebuild.ts";
import { sealEntries } from "./seal-entries.ts";
import { type TestEstate, testEstate } from "./testing/estate.ts";

/** Another enrolled device of the same person. */
async function anotherDevice({ ctx, ids, newId }: TestEstate): Promise<string> {
  const device = newId();
  const said = { asset: null, author: ids.person, civilDate: "2026-10-13", happenedAt: null };
  const body = { device, person: ids.person, key: "x" };
  await appendEntries(ctx, { entries: [{ ...said, kind: "device-enrolled", body }] });
  return device;
}

const register = async (estate: TestEstate, ...numbers: string[]) => {
  const { ctx, session, signed, registered, newId } = estate;
  const made = numbers.map((number) => signed(registered(newId(), number)));
  return sealEntries(ctx, session, made);
};

it("two devices never lease the same number, and no number that any asset bears", async () => {
  const estate = await testEstate();
  const { ctx, session, ids } = estate;
  await register(estate, "FD-007", "fd-041", "FD-9x", "FD-5012345678900", "77", "FD-150");
  const other = await anotherDevice(estate);
  const asked = { site: ids.site, prefix: "FD-", near: 8, after: null };
  const lease = (device: string, given = asked) => leaseNumbers(ctx, session, { ...given, device });
  expect(await lease(ids.device)).toMatchObject({ prefix: "FD-", first: 42, last: 91 });
  expect(await lease(other, { ...asked, prefix: "fd-" })).toMatchObject({ first: 92, last: 141 });
  // From 142 to 149 there is no room for a block.
  const third = await anotherDevice(estate);
  expect(await lease(third)).toMatchObject({ first: 151, last: 200 });
});

it("a site goes on with its own numbers, whatever other sites bear", async () => {
  const estate = await testEstate();
  const { ctx, session, ids, newId } = estate;
  await register(estate, "4037", "7104", "9035");
  const asked = { device: ids.device, prefix: "", after: null };
  const at = (site: string, near: number) => leaseNumbers(ctx, session, { ...asked, site, near });
  expect(await at(ids.site, 4038)).toMatchObject({ first: 4038, last: 4087 });
  expect(await at(newId(), 7105)).toMatchObject({ first: 7105, last: 7154 });
});

it("a lease whose answer was lost is given again, and the next one only after it was seen", async () => {
  const { ctx, session, ids } = await testEstate();
  const asked = { device: ids.device, site: ids.site, prefix: "", near: 1 };
  const lost = await leaseNumbers(ctx, session, { ...asked, after: null });
  expect(await leaseNumbers(ctx, session, { ...asked, after: null })).toEqual(lost);
  const next = await leaseNumbers(ctx, session, { ...asked, after: lost.id });
  expect(next.first).toBe(lost.last + 1);
});

it("each prefix counts for itself", async () => {
  const estate = await testEstate();
  const { ctx, session, ids } = estate;
  await register(estate, "A-300", "4037");
  const asked = { device: ids.device, site: ids.site, near: 300, after: null };
  const lease = (prefix: string) => leaseNumbers(ctx, session, { ...asked, prefix });
  expect((await lease("A-")).first).toBe(301);
  expect((await lease("LEAD ")).first).toBe(300);
});

it("leases are no projection: a rebuild gives no number out again", async () => {
  const { ctx, session, ids } = await testEstate();
  const asked = { device: ids.device, site: ids.site, prefix: "", near: 1 };
  const before = await leaseNumbers(ctx, session, { ...asked, after: null });
  await rebuild(ctx);
  const after = await leaseNumbers(ctx, session, { ...asked, after: before.id });
  expect(after.first).toBe(before.last + 1);
});

it("many asking at once get blocks that do not overlap", async () => {
  const estate = await testEstate();
  const { ctx, session } = estate;
  const asked = { site: estate.ids.site, prefix: "", near: 1, after: null };
  const devices = await Promise.all(Array.from({ length: 12 }, () => anotherDevice(estate)));
  const leased = await Promise.all(
    devices.map((device) => leaseNumbers(ctx, session, { ...asked, device })),
  );
  const firsts = leased.map(({ first }) => first).sort((a, b) => a - b);
  expect(firsts).toEqual(devices.map((_, at) => 1 + at * 50));
});

it("a device that is not this person's leases nothing", async () => {
  const { ctx, session, newId, ids } = await testEstate();
  const asked = { site: ids.site, prefix: "", near: 1, after: null };
  await expect(leaseNumbers(ctx, session, { ...asked, device: newId() })).rejects.toMatchObject({
    code: "device-not-enrolled",
  });
  const other = { person: newId(), role: "manager" } as const;
  await expect(leaseNumbers(ctx, other, { ...asked, device: ids.device })).rejects.toMatchObject({
    code: "device-not-enrolled",
  });
});
