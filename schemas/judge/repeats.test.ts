import { describe, expect, test } from "vitest";
import type { Answer, Answers, Evidence, Particulars } from "../checklist/answer-types.ts";
import type { PointDefinition, RepeatDefinition } from "../checklist/meta-schema.ts";
import { judgeOf, type Parts, reading } from "./testing/checklists.ts";

const mm = (value: number): Answer => ({ value, unit: "mm" });
const gap = reading("mm", [{ max: 4 }], {
  ask: { mandatory: true, evidence: [{ kind: "photo", on: ["fail"] }] },
});
const LEAVES: RepeatDefinition = {
  each: "Leaf",
  members: [
    { id: "left", title: "Left leaf" },
    { id: "right", title: "Right leaf" },
  ],
};
const SOCKETS: RepeatDefinition = { each: "Socket", count: "asset.sockets", atMost: 4 };

const partsOf = (
  repeat: RepeatDefinition,
  properties: Record<string, PointDefinition> = { gap },
  more: Partial<Parts> = {},
): Parts => ({
  particulars: { sockets: { title: "Sockets", type: "integer", minimum: 0, maximum: 9 } },
  properties,
  groups: [{ id: "g", title: "G", points: Object.keys(properties), repeat }],
  ...more,
});
const judged = (
  parts: Parts,
  answers: Answers,
  particulars: Particulars = {},
  evidence: Evidence = {},
) => judgeOf(parts).judge({ particulars, answers, evidence });

describe("a repeat with named members", () => {
  test("asks its points once of each", () => {
    const { points, overall, repeats, complete } = judged(partsOf(LEAVES), {
      "gap@left": mm(4),
      "gap@right": mm(3),
    });
    expect(Object.keys(points)).toEqual(["gap@left", "gap@right"]);
    expect([overall, complete]).toEqual(["pass", true]);
    expect(repeats).toEqual({ g: { expected: 2, members: LEAVES.members, why: null } });
  });

  test("is undecided and not complete while one has no answer, and fails by the gravest", () => {
    const one = judged(partsOf(LEAVES), { "gap@left": mm(4) });
    expect([one.overall, one.complete]).toEqual(["undecided", false]);
    expect(one.problems).toEqual([
      { pointer: "/answers/gap@right", code: "mandatory-not-answered", params: {} },
    ]);
    const bad = judged(partsOf(LEAVES), { "gap@left": mm(5), "gap@right": mm(3) });
    expect([bad.overall, bad.complete]).toEqual(["fail", false]);
  });

  test("takes no answer for somebody else, nor for none", () => {
    const answers = {
      "gap@left": mm(4),
      "gap@right": mm(3),
      "gap@middle": mm(9),
      gap: mm(9),
      "gap@": mm(9),
      "strange@left": mm(9),
    };
    const { overall, problems, points } = judged(partsOf(LEAVES), answers);
    expect(overall).toBe("pass");
    expect(Object.keys(points)).toHaveLength(2);
    expect(problems.map(({ pointer, code }) => [pointer, code])).toEqual([
      ["/answers/gap", "unknown-member"],
      ["/answers/gap@", "unknown-member"],
      ["/answers/gap@middle", "unknown-member"],
      ["/answers/strange@left", "unknown-point"],
    ]);
  });

  test("wants evidence of each member by itself", () => {
    const answers = { "gap@left": mm(5), "gap@right": mm(5) };
    const photo = [{ kind: "photo" as const, sha256: "a".repeat(64) }];
    const missing = (evidence: Evidence) =>
      judged(partsOf(LEAVES), answers, {}, evidence).problems.map(({ pointer }) => pointer);
    expect(missing({ "gap@left": photo })).toEqual(["/evidence/gap@right"]);
    expect(missing({ gap: photo })).toEqual(["/evidence/gap@left", "/evidence/gap@right"]);
    expect(missing({ "gap@left": photo, "gap@right": photo })).toEqual([]);
  });
});

describe("a repeat that is counted", () => {
  const three: Answers = { "gap@1": mm(1), "gap@2": mm(1), "gap@3": mm(1) };

  test("has as many members as its particular says, by number", () => {
    const { overall, complete, repeats } = judged(partsOf(SOCKETS), three, { sockets: 3 });
    expect([overall, complete]).toEqual(["pass", true]);
    expect(repeats.g?.members.map(({ id, title }) => [id, title])).toEqual([
      ["1", "Socket 1"],
      ["2", "Socket 2"],
      ["3", "Socket 3"],
    ]);
    expect(judged(partsOf(SOCKETS), three, { sockets: 4 }).overall).toBe("undecided");
    const fewer = judged(partsOf(SOCKETS), three, { sockets: 2 });
    expect(fewer.problems.map(({ pointer }) => pointer)).toEqual(["/answers/gap@3"]);
  });

  test("may be a plain number", () => {
    const plain = partsOf({ each: "Socket", count: 3 });
    expect(judged(plain, three).overall).toBe("pass");
    expect(judged(plain, { ...three, "gap@3": mm(5) }).overall).toBe("fail");
  });

  test.each([
    ["missing", {}, "missing"],
    ["above the most it may have", { sockets: 5 }, "count-not-right"],
    ["nothing", { sockets: 0 }, "count-not-right"],
    ["no whole number", { sockets: 2.5 }, "wrong-type"],
    ["a word", { sockets: "3" }, "wrong-type"],
    ["outside its own definition", { sockets: -1 }, "particular-too-small"],
  ])("is undecided and never complete when its number is %s", (_, particulars, code) => {
    const found = judged(partsOf(SOCKETS), three, particulars as Particulars);
    expect([found.overall, found.complete]).toEqual(["undecided", false]);
    expect(found.repeats.g).toMatchObject({ expected: null, why: { code } });
    expect(found.problems).toContainEqual({
      pointer: "/answers",
      code: "repeat-undecided",
      params: { repeat: "g", cause: code },
    });
    // What was found is not hidden: it is judged, and a fail is a fail.
    expect(found.points["gap@1"]?.verdict).toBe("pass");
    const bad = judged(partsOf(SOCKETS), { "gap@1": mm(9) }, particulars as Particulars);
    expect(bad.overall).toBe("fail");
  });

  test("counted by another answer waits for that answer", () => {
    const n: PointDefinition = { $ref: "#/$defs/count", title: "How many?" };
    const parts: Parts = {
      properties: { n, gap },
      groups: [{ id: "g", title: "G", points: ["gap"], repeat: { each: "S", count: "answers.n" } }],
    };
    expect(judged(parts, { ...three, n: 3 }).overall).toBe("pass");
    expect(judged(parts, three).overall).toBe("undecided");
    expect(judged(parts, { n: 3 })).toMatchObject({ overall: "undecided", complete: false });
  });

  test("has the same members whatever order their answers come in", () => {
    const ids = ["9", "10", "1b", "02", "2", "x"];
    const open = partsOf({ ...SOCKETS, atMost: 4 });
    const found = [ids, ids.toReversed(), ids.toSorted()].map((order) => {
      const answers = Object.fromEntries(order.map((id) => [`gap@${id}`, mm(1)]));
      return judged(open, answers).repeats.g?.members.map(({ id }) => id);
    });
    expect(found[1]).toEqual(found[0]);
    expect(found[2]).toEqual(found[0]);
  });
});

describe("inside a repeat", () => {
  const ajar: PointDefinition = {
    $ref: "#/$defs/check",
    title: "Ajar?",
    limits: [{ accept: ["ok"] }],
  };

  test("a formula sees the same member's answers", () => {
    const width = reading("mm");
    const parts = partsOf(LEAVES, { width, gap: reading("mm", [{ max: "answers.width * 2" }]) });
    const { points } = judged(parts, {
      "width@left": mm(1),
      "width@right": mm(10),
      "gap@left": mm(5),
      "gap@right": mm(5),
    });
    expect([points["gap@left"]?.verdict, points["gap@left"]?.bound]).toEqual(["fail", 2]);
    expect([points["gap@right"]?.verdict, points["gap@right"]?.bound]).toEqual(["pass", 20]);
  });

  test("a condition asks member by member", () => {
    const asked = reading("mm", [{ max: 4 }], { ask: { when: "answers.ajar == 'not-ok'" } });
    const { points, overall } = judged(partsOf(LEAVES, { ajar, gap: asked }), {
      "ajar@left": "ok",
      "ajar@right": "not-ok",
      "gap@left": mm(9),
      "gap@right": mm(1),
    });
    expect([points["gap@left"]?.asked, points["gap@right"]?.verdict]).toEqual([false, "pass"]);
    expect(overall).toBe("fail");
  });

  test("the time before is the same member's", () => {
    const same = reading("mm", [{ sameAsLast: { within: 1 } }]);
    const answers: Answers = { "gap@left": mm(5), "gap@right": mm(5) };
    const previous: Answers = { "gap@left": mm(5), "gap@right": mm(9), gap: mm(5) };
    const { points } = judgeOf(partsOf(LEAVES, { gap: same })).judge({
      particulars: {},
      answers,
      previous,
    });
    expect([points["gap@left"]?.verdict, points["gap@right"]?.verdict]).toEqual(["pass", "fail"]);
  });

  test("a stop stops its own member alone, and what is asked once is stopped by any", () => {
    const parts: Parts = {
      properties: { ajar, gap, whole: ajar },
      groups: [{ id: "g", title: "G", points: ["ajar", "gap"], repeat: LEAVES }],
      stops: [{ after: ["ajar"], on: ["fail"], points: ["gap", "whole"], say: "Wait." }],
    };
    const asked = (left: string, right?: string) => {
      const answers = { "ajar@left": left, ...(right && { "ajar@right": right }), whole: "ok" };
      const { points } = judged(parts, answers as Answers);
      return ["gap@left", "gap@right", "whole"].map((name) => points[name]?.why.code);
    };
    expect(asked("not-ok", "ok")).toEqual(["stopped", "not-answered", "stopped"]);
    expect(asked("ok", "ok")).toEqual(["not-answered", "not-answered", "accepted"]);
    expect(asked("ok")).toEqual(["not-answered", "stop-undecided", "stop-undecided"]);
    expect(asked("not-ok")).toEqual(["stopped", "stop-undecided", "stopped"]);
  });

  test("a stop by a repeat whose number is not known leaves its target open", () => {
    const parts: Parts = {
      properties: { ajar, whole: ajar },
      groups: [{ id: "g", title: "G", points: ["ajar"], repeat: SOCKETS }],
      stops: [{ after: ["ajar"], on: ["fail"], points: ["whole"], say: "Wait." }],
    };
    const { points } = judged(parts, { "ajar@1": "ok", whole: "ok" });
    expect(points.whole?.why.code).toBe("stop-undecided");
  });
});

test("outside a repeat a formula sees none of its answers", () => {
  const parts: Parts = {
    properties: { gap, whole: reading("mm", [{ max: "answers.gap" }]) },
    groups: [{ id: "g", title: "G", points: ["gap"], repeat: LEAVES }],
  };
  const answers = { gap: mm(9), "gap@left": mm(1), "gap@right": mm(1), whole: mm(1) };
  expect(judged(parts, answers).points.whole?.verdict).toBe("undecided");
});

test("one point is judged by the name of its answer, and by no other name", () => {
  const judge = judgeOf(partsOf(LEAVES));
  const input = { particulars: {}, answers: { "gap@left": mm(5) } };
  expect(judge.judgePoint("gap@left", input).verdict).toBe("fail");
  expect(() => judge.judgePoint("gap", input)).toThrow(RangeError);
  expect(judge.members(input)).toEqual({
    g: { expected: 2, members: LEAVES.members, why: null },
  });
});
