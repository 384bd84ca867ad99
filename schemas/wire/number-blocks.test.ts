import { expect, it } from "vitest";
import { serialOf } from "./number-blocks.ts";

it("a number is what stands before its digits, what they count and how wide they are", () => {
  expect(serialOf("FD-009")).toEqual({ prefix: "FD-", value: 9, width: 3 });
  expect(serialOf("4033")).toEqual({ prefix: "", value: 4033, width: 4 });
  expect(serialOf("2 B 7")).toEqual({ prefix: "2 B ", value: 7, width: 1 });
});

it("a number without digits at its end, or with more than count, has no next", () => {
  expect(serialOf("lead")).toBeNull();
  expect(serialOf("5012345678900")).toBeNull();
});
