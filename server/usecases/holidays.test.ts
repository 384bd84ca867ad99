import { expect, test } from "vitest";
import { BANK_HOLIDAYS } from "../../schemas/testing/bank-holidays.ts";
import { holidaysOf, readRegions } from "./holidays.ts";

const datesOf = async (region: string, year: number) =>
  (await holidaysOf(region, year)).map(({ date }) => date);

const IN_2025 = ["01-01", "04-18", "04-21", "05-05", "05-26", "08-25", "12-25", "12-26"];

// gov.uk/bank-holidays; those of 2025 from memory.
test.each([2025, 2026, 2027])(
  "the bank holidays of England and Wales in %i are those published, substitute days alone",
  async (year) => {
    const published =
      year === 2025
        ? IN_2025.map((day) => `2025-${day}`)
        : BANK_HOLIDAYS.filter((date) => date.startsWith(`${year}`));
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
