import { describe, expect, it } from "vitest";
import { createRateLimit } from "./rate-limit.ts";

const at = (start = 0) => {
  let now = start;
  return { now: () => now, pass: (ms: number) => (now += ms) };
};

describe("rate limit", () => {
  it("lets the capacity through and then says how many seconds to wait", () => {
    const clock = at();
    const limit = createRateLimit({ capacity: 3, perMs: 30_000 }, clock.now);
    expect([limit.take("a"), limit.take("a"), limit.take("a")]).toEqual([0, 0, 0]);
    expect(limit.take("a")).toBe(10);
    clock.pass(4_000);
    expect(limit.take("a")).toBe(6);
    clock.pass(6_000);
    expect(limit.take("a")).toBe(0);
  });

  it("keeps one key's use from another's", () => {
    const limit = createRateLimit({ capacity: 1, perMs: 1_000 }, at().now);
    expect(limit.take("a")).toBe(0);
    expect(limit.take("b")).toBe(0);
    expect(limit.take("a")).toBe(1);
  });

  it("a refused try costs nothing, and a clock set back gives nothing", () => {
    const clock = at(100_000);
    const limit = createRateLimit({ capacity: 1, perMs: 10_000 }, clock.now);
    limit.take("a");
    for (let n = 0; n < 50; n += 1) expect(limit.take("a")).toBe(10);
    clock.pass(-50_000);
    expect(limit.take("a")).toBeGreaterThan(0);
    clock.pass(60_000);
    expect(limit.take("a")).toBe(0);
  });

  it("forgiving a key empties its account", () => {
    const limit = createRateLimit({ capacity: 1, perMs: 1_000 }, at().now);
    limit.take("a");
    limit.forgive("a");
    expect(limit.take("a")).toBe(0);
  });

  it("twenty thousand strangers do not make it forget its bound", () => {
    const clock = at();
    const limit = createRateLimit({ capacity: 2, perMs: 1_000 }, clock.now);
    for (let n = 0; n < 20_000; n += 1) limit.take(`stranger ${n}`);
    limit.take("a");
    limit.take("a");
    expect(limit.take("a")).toBe(1);
  });
});
