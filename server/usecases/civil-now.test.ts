import { expect, it } from "vitest";
import { civilAt, offsetMinutes } from "./civil-now.ts";

it("a site's civil date follows its zone's clocks, summer time and date line included", () => {
  // Zone offsets as published in the IANA time zone database.
  expect(civilAt("Europe/London", Date.parse("2026-07-01T23:30:00Z"))).toBe("2026-07-02");
  expect(civilAt("Europe/London", Date.parse("2026-01-01T23:30:00Z"))).toBe("2026-01-01");
  expect(civilAt("Pacific/Kiritimati", Date.parse("2026-01-01T10:00:00Z"))).toBe("2026-01-02");
  expect(civilAt("America/Toronto", Date.parse("2026-01-01T04:59:59Z"))).toBe("2025-12-31");
  expect(offsetMinutes("Asia/Kathmandu", 0)).toBe(330);
  expect(offsetMinutes("Asia/Kathmandu", Date.parse("2026-01-01T00:00:00Z"))).toBe(345);
});
