import { expect, it } from "vitest";
import { LAMPS } from "../testing/kinds.ts";
import { evidenceDue, isMissing } from "./evidence-due.ts";

const asked = {
  ...LAMPS,
  ask: { evidence: [{ kind: "photo", on: ["fail"], atLeast: 2 }] },
} as const;
const photo = (digit: string) => ({ kind: "photo", sha256: digit.repeat(64) }) as const;
const missing = (...items: ReturnType<typeof photo>[]) =>
  evidenceDue(asked as never, "fail", items).some(isMissing);

it("one photo kept twice is one photo, as the judge counts", () => {
  expect(missing(photo("a"), photo("a"))).toBe(true);
  expect(missing(photo("a"), photo("b"))).toBe(false);
});
