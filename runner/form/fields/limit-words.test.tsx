import type { LimitJudgement, PointJudgement } from "@roundbook/schemas";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { LimitWords } from "./limit-words.tsx";

const limit = (over: Partial<LimitJudgement>): LimitJudgement => ({
  index: 0,
  severity: "fail",
  kind: "min",
  bound: 2,
  verdict: "pass",
  why: { code: "no-limits", params: {} },
  ...over,
});
const drawn = (limits: readonly LimitJudgement[], all: boolean) =>
  renderToStaticMarkup(
    <LimitWords
      quantity={{ unit: "mm", decimals: 1 }}
      judgement={{ verdict: "pass", bound: 2, why: limit({}).why, limits } as PointJudgement}
      limits={limits}
      all={all}
    />,
  );

it("a limit with two sides is said as one range, before and after it is answered", () => {
  const both = [limit({}), limit({ kind: "max", bound: 4 })];
  const range = '<p class="equation">2.0 to 4.0\u00a0mm</p>';
  expect(drawn(both, true)).toBe(range);
  expect(drawn(both, false)).toBe(range);
});

it("a side that is worked out is said with its working, and the other by itself", () => {
  const said = drawn([limit({}), limit({ kind: "max", bound: 4, working: "1 + 3" })], true);
  expect(said).toContain("min 2.0\u00a0mm");
  expect(said).toContain("max 4.0\u00a0mm = 1 + 3");
});
