import { expect, test } from "vitest";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { neededFirst } from "./needed-first.ts";
import { checklist, judgeOf, reading } from "./testing/checklists.ts";

const MOST = 1000;
const nested = (name: string) => `${"(1 * ".repeat(12)}${name}${")".repeat(12)}`;
const chain = (length: number): Record<string, PointDefinition> =>
  Object.fromEntries(
    Array.from({ length }, (_, index) => [
      `p${index}`,
      index === length - 1
        ? reading("Ohm", [{ max: 1 }])
        : ({
            $ref: "#/$defs/calculated",
            title: "Next",
            quantity: { unit: "Ohm" },
            calculate: nested(`answers.p${index + 1}`),
            ask: { when: `answers.p${index + 1} > 0` },
            limits: [{ max: 1 }],
          } as const),
    ]),
  );

test("a chain through every point a checklist may have is worked out to its end", () => {
  const judge = judgeOf({ properties: chain(MOST) });
  const input = (value: number) => ({
    particulars: {},
    answers: { [`p${MOST - 1}`]: { value, unit: "Ohm" } },
  });
  expect(judge.judge(input(1)).points.p0).toMatchObject({ verdict: "pass", value: 1 });
  expect(judge.judge(input(2)).points.p0?.verdict).toBe("fail");
  expect(judge.judgePoint("p0", input(2)).verdict).toBe("fail");
  expect(judge.judge({ particulars: {}, answers: {} }).points.p0?.verdict).toBe("undecided");
});

test("so is one through the members of a repeat", () => {
  const properties = chain(300);
  const groups = [
    { id: "g", title: "G", points: Object.keys(properties), repeat: { each: "E", count: 3 } },
  ];
  const answers = { "p299@1": { value: 1, unit: "Ohm" }, "p299@2": { value: 2, unit: "Ohm" } };
  const { points } = judgeOf({ properties, groups }).judge({ particulars: {}, answers });
  expect(["p0@1", "p0@2", "p0@3"].map((name) => points[name]?.verdict)).toEqual([
    "pass",
    "fail",
    "undecided",
  ]);
});

test("in a long chain what is needed comes first; circles and short chains need no order", () => {
  const order = neededFirst(checklist({ properties: chain(100) }));
  expect(order.indexOf("p98")).toBeLessThan(order.indexOf("p0"));
  expect(neededFirst(checklist({ properties: chain(20) }))).toEqual([]);
  const circle = { ...chain(100), p99: chain(2).p0, p1: chain(2).p0 } as ReturnType<typeof chain>;
  expect(() => neededFirst(checklist({ properties: circle }))).not.toThrow();
});
