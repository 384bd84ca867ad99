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

it("two devices never lease the same number, and both begin after what any asset bears", async () => {
  const estate = await testEstate();
  const { ctx, session, ids } = estate;
  await register(estate, "FD-007", "fd-041", "FD-9x", "FD-5012345678900", "77");
  const other = await anotherDevice(estate);
  const asked = { prefix: "FD-", after: null };
  expect(await leaseNumbers(ctx, session, { ...asked, device: ids.device })).toEqual({
    prefix: "FD-",
    first: 42,
    last: 91,
  });
  expect(await leaseNumbers(ctx, session, { ...asked, prefix: "fd-", device: other })).toEqual({
    prefix: "fd-",
    first: 92,
    last: 141,
  });
});

it("a lease whose answer was lost is given again, and the next one only after it was seen", async () => {
  const { ctx, session, ids } = await testEstate();
  const asked = { device: ids.device, prefix: "" };
  const lost = await leaseNumbers(ctx, session, { ...asked, after: null });
  expect(await leaseNumbers(ctx, session, { ...asked, after: null })).toEqual(lost);
  const next = await leaseNumbers(ctx, session, { ...asked, after: lost.first });
  expect(next.first).toBe(lost.last + 1);
});

it("each prefix counts for itself", async () => {
  const estate = await testEstate();
  const { ctx, session, ids } = estate;
  await register(estate, "A-300", "4037");
  const lease = (prefix: string) =>
    leaseNumbers(ctx, session, { device: ids.device, prefix, after: null });
  expect((await lease("A-")).first).toBe(301);
  expect((await lease("")).first).toBe(4038);
  expect((await lease("LEAD ")).first).toBe(1);
});

it("leases are no projection: a rebuild gives no number out again", async () => {
  const { ctx, session, ids } = await testEstate();
  const asked = { device: ids.device, prefix: "" };
  const before = await leaseNumbers(ctx, session, { ...asked, after: null });
  await rebuild(ctx);
  const after = await leaseNumbers(ctx, session, { ...asked, after: before.first });
  expect(after.first).toBe(before.last + 1);
});

it("many asking at once get blocks that do not overlap", async () => {
  const estate = await testEstate();
  const { ctx, session } = estate;
  const devices = await Promise.all(Array.from({ length: 12 }, () => anotherDevice(estate)));
  const leased = await Promise.all(
    devices.map((device) => leaseNumbers(ctx, session, { device, prefix: "", after: null })),
  );
  const firsts = leased.map(({ first }) => first).sort((a, b) => a - b);
  expect(firsts).toEqual(devices.map((_, at) => 1 + at * 50));
});

it("a device that is not this person's leases nothing", async () => {
  const { ctx, session, newId, ids } = await testEstate();
  const asked = { prefix: "", after: null };
  await expect(leaseNumbers(ctx, session, { ...asked, device: newId() })).rejects.toMatchObject({
    code: "device-not-enrolled",
  });
  const other = { person: newId(), role: "manager" } as const;
  await expect(leaseNumbers(ctx, other, { ...asked, device: ids.device })).rejects.toMatchObject({
    code: "device-not-enrolled",
  });
});
