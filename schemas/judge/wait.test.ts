import { describe, expect, test } from "vitest";
import type { Answer } from "../checklist/answer-types.ts";
import type { AskDefinition, PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOne, reading } from "./testing/checklists.ts";

type Wait = NonNullable<AskDefinition["wait"]>;

const why = (wait: Wait, elapsed: unknown, value = 1) => {
  const point = reading("Cel", [{ max: 20 }], { ask: { wait } });
  const answer = { value, unit: "Cel", ...(elapsed === undefined ? {} : { elapsed }) };
  const { verdict, why: reason } = judgeOne(point, answer as Answer);
  return [verdict, reason.code];
};

describe("a reading that has its time", () => {
  test.each([
    [{ atLeast: 60 }, undefined, "elapsed-missing"],
    [{ atLeast: 60 }, Number.NaN, "elapsed-missing"],
    [{ atLeast: 60 }, "60", "elapsed-missing"],
    [{ atLeast: 60 }, null, "elapsed-missing"],
    [{ atLeast: 60 }, 0, "read-too-early"],
    [{ atLeast: 60 }, 59.9, "read-too-early"],
    [{ atLeast: 60 }, -60, "read-too-early"],
    [{ atMost: 90 }, undefined, "elapsed-missing"],
    [{ atMost: 90 }, 90.1, "read-too-late"],
    [{ atLeast: 60, atMost: 90 }, 59, "read-too-early"],
    [{ atLeast: 60, atMost: 90 }, 91, "read-too-late"],
  ])("of %j is undecided after %s: %s", (wait, elapsed, code) => {
    expect(why(wait, elapsed)).toEqual(["undecided", code]);
    // A figure out of time does not fail either: it is not the one that was asked for.
    expect(why(wait, elapsed, 99)).toEqual(["undecided", code]);
  });

  test.each([
    [{ atLeast: 60 }, 60],
    [{ atLeast: 60 }, 3600],
    [{ atMost: 90 }, 90],
    [{ atMost: 90 }, 0],
    [{ atLeast: 60, atMost: 90 }, 60],
    [{ atLeast: 60, atMost: 90 }, 90],
  ])("of %j is judged after %d s", (wait, elapsed) => {
    expect(why(wait, elapsed)).toEqual(["pass", "within-max"]);
    expect(why(wait, elapsed, 20.1)).toEqual(["fail", "above-max"]);
  });

  test("may be one of several: one out of time leaves all undecided", () => {
    const point: PointDefinition = {
      $ref: "#/$defs/readings",
      title: "Temperatures",
      quantity: { unit: "Cel" },
      several: { count: 2, combine: "highest" },
      ask: { wait: { atLeast: 60 } },
      limits: [{ max: 20 }],
    };
    const readAfter = (...times: number[]) =>
      judgeOne(
        point,
        times.map((elapsed) => ({ value: 1, unit: "Cel", elapsed })),
      );
    expect(readAfter(60, 61).verdict).toBe("pass");
    expect(readAfter(60, 59)).toMatchObject({
      verdict: "undecided",
      why: { code: "read-too-early" },
    });
  });

  test("that asks for no wait is judged whatever time stands beside it", () => {
    const timed = { value: 1, unit: "Cel", elapsed: 3 };
    expect(judgeOne(reading("Cel", [{ max: 20 }]), timed).verdict).toBe("pass");
  });
});
