import { describe, expect, test } from "vitest";
import type { Answer, Evidence } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { compileJudge } from "./compile-judge.ts";
import { checklist, graded, judgeOf, type Parts, reading } from "./testing/checklists.ts";

const ohm = (value: number): Answer => ({ value, unit: "Ohm" });
const max2 = reading("Ohm", [{ max: 2 }], { ask: { absentAllowed: ["not-applicable"] } });
const soft = reading("Ohm", [{ max: 2, severity: "advisory" }]);
const note: PointDefinition = { $ref: "#/$defs/text", title: "Note" };
const NA: Answer = { absent: { reason: "not-applicable" } };

const overall = (properties: Parts["properties"], answers: Record<string, Answer>) =>
  judgeOf({ properties }).judge({ particulars: {}, answers }).overall;

describe("overall", () => {
  test.each([
    [ohm(1), ohm(1), ohm(1), "pass"],
    [ohm(1), ohm(1), ohm(3), "advisory"],
    [ohm(1), undefined, ohm(3), "undecided"],
    [ohm(3), undefined, ohm(3), "fail"],
    [NA, ohm(1), ohm(1), "pass"],
    [undefined, undefined, undefined, "undecided"],
  ])("%j, %j and %j: %s", (a, b, c, verdict) => {
    const answers = Object.entries({ a, b, c }).flatMap(([name, answer]) =>
      answer === undefined ? [] : [[name, answer] as const],
    );
    expect(overall({ a: max2, b: max2, c: soft }, Object.fromEntries(answers))).toBe(verdict);
  });

  test("with nothing counted it is not evaluated, whatever was noted", () => {
    expect(overall({ a: max2, note }, { a: NA })).toBe("not-evaluated");
    expect(overall({ a: max2, note }, { a: NA, note: "was away" })).toBe("not-evaluated");
  });

  test("a checklist with nothing to judge by has none once something is answered", () => {
    expect(overall({ note, grade: graded() }, {})).toBe("not-evaluated");
    expect(overall({ note, grade: graded() }, { grade: NA })).toBe("not-evaluated");
    expect(overall({ note, grade: graded() }, { note: "seen" })).toBeNull();
  });
});

describe("asked", () => {
  const properties = {
    kind: {
      $ref: "#/$defs/choice",
      title: "Kind",
      oneOf: [
        { const: "a", title: "A" },
        { const: "b", title: "B" },
      ],
    },
    x: reading("Ohm", [{ max: 2 }], { ask: { when: "answers.kind == 'a'", mandatory: true } }),
    y: reading("Ohm", [{ max: "answers.x" }]),
  } as const satisfies Parts["properties"];
  const judge = judgeOf({ properties });
  const run = (answers: Record<string, Answer>) => judge.judge({ particulars: {}, answers });

  test("a point that is not asked has no verdict; its answer is kept and not counted", () => {
    const judged = run({ kind: "b", x: ohm(99) });
    expect(judged.points.x).toMatchObject({ verdict: null, asked: false });
    expect(judged.problems).toEqual([]);
  });

  test("a condition that cannot be had leaves the point undecided and the inspection incomplete", () => {
    const judged = run({ x: ohm(1) });
    expect(judged.points.x).toMatchObject({ verdict: "undecided", why: { code: "missing" } });
    expect(judged.complete).toBe(false);
    expect(judged.problems).toContainEqual({
      pointer: "/answers/x",
      code: "ask-undecided",
      params: { cause: "missing" },
    });
  });

  test("an answer that is not counted, or censored, gives no bound for another point", () => {
    expect(run({ kind: "a", x: ohm(1), y: ohm(0.5) }).points.y?.verdict).toBe("pass");
    expect(run({ kind: "b", x: ohm(1), y: ohm(0.5) }).points.y?.verdict).toBe("undecided");
    const censored = { value: 1, unit: "Ohm", comparator: ">" } as const;
    expect(run({ kind: "a", x: censored, y: ohm(0.5) }).points.y?.verdict).toBe("undecided");
  });

  test("conditions that wait for each other are undecided", () => {
    const when = (other: string) => graded({ ask: { when: `answers.${other} == 1.0` } });
    const judged = judgeOf({ properties: { a: when("b"), b: when("a") } });
    const { points } = judged.judge({ particulars: {}, answers: { a: 1, b: 1 } });
    expect([points.a?.verdict, points.b?.verdict]).toEqual(["undecided", "undecided"]);
  });
});

describe("complete", () => {
  const cable: PointDefinition = {
    $ref: "#/$defs/check",
    title: "Cable",
    limits: [{ accept: ["ok"] }],
    ask: {
      mandatory: true,
      absentAllowed: ["no-access"],
      evidence: [
        { kind: "photo", on: ["fail"], atLeast: 2 },
        { kind: "note", on: ["fail", "undecided"] },
      ],
    },
  };
  const judge = judgeOf({ properties: { cable, free: max2 } });
  const run = (cableAnswer: Answer | undefined, evidence: Evidence = {}) => {
    const answers: Record<string, Answer> = cableAnswer === undefined ? {} : { cable: cableAnswer };
    const { complete, problems } = judge.judge({ particulars: {}, answers, evidence });
    return [complete, ...problems.map(({ pointer, code }) => `${pointer} ${code}`)];
  };
  const sha256 = "0".repeat(64);

  test.each([
    ["ok", [true]],
    [{ absent: { reason: "no-access" } }, [true]],
    [
      undefined,
      [false, "/answers/cable mandatory-not-answered", "/evidence/cable evidence-missing"],
    ],
    [
      { absent: { reason: "not-checked" } },
      [false, "/answers/cable absence-not-allowed", "/evidence/cable evidence-missing"],
    ],
    ["not-ok", [false, "/evidence/cable evidence-missing", "/evidence/cable evidence-missing"]],
  ] as const)("a mandatory point answered %j", (answer, expected) => {
    expect(run(answer)).toEqual(expected);
  });

  test("evidence is counted by kind, and an empty note is none", () => {
    const photo = { kind: "photo", sha256 } as const;
    const empty = { kind: "note", note: "  " } as const;
    const other = { kind: "photo", sha256: "b".repeat(64) } as const;
    const note = { kind: "note", note: "split" } as const;
    expect(run("not-ok", { cable: [photo, other, note] })).toEqual([true]);
    // One photo named twice is one photo.
    expect(run("not-ok", { cable: [photo, photo, note] })).toHaveLength(2);
    expect(run("not-ok", { cable: [photo, { kind: "photo" }, empty] })).toHaveLength(3);
  });

  test("an answer to no point of the checklist is told", () => {
    const { problems } = judge.judge({ particulars: {}, answers: { cable: "ok", cablee: "ok" } });
    expect(problems).toEqual([
      {
        pointer: "/answers/cablee",
        code: "unknown-point",
        params: { point: "cablee", nearest: "cable" },
      },
    ]);
  });
});

test("left unexplained, every verdict, bound and problem is the same", () => {
  const judge = judgeOf({ properties: { a: max2, b: soft, c: max2, note } });
  const input = { particulars: {}, answers: { a: ohm(1), b: ohm(3), note: "x" } };
  const full = judge.judge(input);
  const brief = judge.judge(input, { explain: false });
  const core = (judged: typeof full) =>
    Object.entries(judged.points).map(([id, { verdict, bound, asked }]) => [
      id,
      verdict,
      bound,
      asked,
    ]);
  expect(core(brief)).toEqual(core(full));
  expect({ ...brief, points: null }).toEqual({ ...full, points: null });
});

test("a checklist with formulas asks for the engine when it is prepared", () => {
  const doc = checklist({ properties: { a: reading("Ohm", [{ max: "1.0 + 1.0" }]) } });
  expect(() => compileJudge(doc)).toThrow(/formula engine/);
  expect(() =>
    judgeOf({ properties: { a: max2 } }).judgePoint("b", { particulars: {}, answers: {} }),
  ).toThrow(RangeError);
});
