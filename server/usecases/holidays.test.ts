import { expect, test } from "vitest";
import { readLogState } from "../store/append-log.ts";
import { holidays } from "../store/schema/calendars.ts";
import { holidaysOf, readRegions, renewHolidays } from "./holidays.ts";
import { setCalendar } from "./set-calendar.ts";
import { testEstate } from "./testing/estate.ts";

const datesOf = async (region: string, year: number) =>
  (await holidaysOf(region, year)).map(({ date }) => date);

// gov.uk/bank-holidays; those of 2025 from memory.
const PUBLISHED: Readonly<Record<number, readonly string[]>> = {
  2025: ["01-01", "04-18", "04-21", "05-05", "05-26", "08-25", "12-25", "12-26"],
  2026: ["01-01", "04-03", "04-06", "05-04", "05-25", "08-31", "12-25", "12-28"],
  2027: ["01-01", "03-26", "03-29", "05-03", "05-31", "08-30", "12-27", "12-28"],
};

test.each([2025, 2026, 2027])(
  "the bank holidays of England and Wales in %i are those published, substitute days alone",
  async (year) => {
    const published = (PUBLISHED[year] ?? []).map((day) => `${year}-${day}`);
    expect(published.length).toBeGreaterThan(7);
    expect(await datesOf("GB-ENG", year)).toEqual(published);
    expect(await datesOf("GB-WLS", year)).toEqual(published);
  },
);

// gov.uk/bank-holidays, from memory: Scotland keeps 2 January and St Andrew's Day, Northern Ireland 12 July.
test("parts of a country have holidays of their own", async () => {
  expect(await datesOf("GB-SCT", 2026)).toEqual(
    expect.arrayContaining(["2026-01-02", "2026-11-30"]),
  );
  expect(await datesOf("GB-NIR", 2027)).toContain("2027-07-12");
  expect(await datesOf("GB-ENG", 2027)).not.toContain("2027-07-12");
});

test("a holiday has a name that people read", async () => {
  const days = await holidaysOf("GB-ENG", 2027);
  expect(days.find(({ date }) => date === "2027-12-27")).toEqual({
    date: "2027-12-27",
    reason: "Christmas Day",
  });
});

test("regions are countries and their parts, by name", async () => {
  const regions = await readRegions();
  expect(regions).toContainEqual({ code: "GB-ENG", name: "United Kingdom, England" });
  expect(regions.every(({ code }) => /^[A-Z]{2}(-[A-Z0-9]{1,3})?$/.test(code))).toBe(true);
  expect(regions.length).toBeGreaterThan(150);
});

test("a server that starts in a later year writes down the years its regions have come to need", async () => {
  const { ctx, clock, ids, session } = await testEstate();
  await setCalendar(ctx, session, ids.site, { region: "GB-ENG" });
  const years = async () =>
    (await ctx.store.db.select().from(holidays)).map(({ year }) => year).toSorted();
  expect(await years()).toEqual([2025, 2026, 2027, 2028, 2029, 2030, 2031]);
  const { size } = await readLogState(ctx.store.db);
  await renewHolidays(ctx);
  expect((await readLogState(ctx.store.db)).size).toBe(size);
  clock.now += 366 * 86_400_000;
  await renewHolidays(ctx);
  expect(await years()).toEqual([2025, 2026, 2027, 2028, 2029, 2030, 2031, 2032]);
});
