import { describe, expect, test } from "vitest";
import { LONGEST_LINE } from "./lines.ts";
import { commandLineOf } from "./testing/run.ts";

/** A draft as a designer has it: the answer types are not embedded yet. */
const LEAD = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  dialect: "urn:roundbook:checklist:1",
  title: "Extension lead",
  type: "object",
  particulars: {
    length: { title: "Length", type: "number", unit: "m" },
    csa: { title: "Cross-section", type: "number", unit: "mm2", enum: [1.5, 2.5] },
  },
  values: {
    joints: { title: "Joints", unit: "Ohm", const: 0.1 },
    r_per_m: {
      title: "Resistance per metre",
      unit: "Ohm/m",
      table: {
        policy: "unique",
        inputs: ["asset.csa"],
        rules: [
          // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
          { when: [1.5], then: 0.0133 },
          // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
          { when: [2.5], then: 0.00798 },
        ],
      },
    },
  },
  properties: {
    earth: {
      $ref: "#/$defs/reading",
      title: "Earth continuity",
      quantity: { unit: "Ohm" },
      // 0.0133 Ohm a metre at 1.5 mm² from IEC 60228 class 5 at 20 °C; 0.1 Ohm is common practice.
      limits: [{ max: "joints + asset.length * r_per_m", basis: "IEC 60228, plus 0.1 Ohm" }],
      ask: { mandatory: true },
    },
  },
  additionalProperties: false,
};
const line = (answers: unknown, checklist: unknown = LEAD) =>
  JSON.stringify({ checklist, particulars: { length: 10, csa: 1.5 }, answers });
const ohm = (value: number) => ({ earth: { value, unit: "Ohm" } });

async function judged(...lines: string[]) {
  const { status, out, err } = await commandLineOf()(["judge", "--json"], lines.join("\n"));
  return { status, err, rows: out.map((text) => JSON.parse(text)) };
}

describe("judge", () => {
  test("gives a judgement a line, with the bound worked out in words", async () => {
    const { status, rows } = await judged(line(ohm(0.233)), line(ohm(0.234)), line({}));
    expect(status).toBe(0);
    expect(rows.map((row) => [row.overall, row.points.earth.verdict])).toEqual([
      ["pass", "pass"],
      ["fail", "fail"],
      ["undecided", "undecided"],
    ]);
    expect(rows[1].points.earth).toMatchObject({
      bound: 0.233,
      why: "max 0.233 Ohm = 0.1 + 10 × 0.0133; 0.234 Ohm is 0.001 Ohm above",
    });
    expect(rows[2].points.earth.why).toBe("not answered");
    expect(rows[2].problems).toMatchObject([
      { pointer: "/answers/earth", says: "/answers/earth: this has to be answered" },
    ]);
  });

  test("names what is wrong with a line on that line, and goes on", async () => {
    const { status, rows, err } = await judged(
      "{",
      JSON.stringify({ answers: {} }),
      line(ohm(0.1), { ...LEAD, limts: [] }),
      line(ohm(0.1)),
    );
    expect(status).toBe(2);
    expect(rows.map((row) => row.overall)).toEqual([null, null, null, "pass"]);
    expect(rows.map((row) => row.problems[0]?.says)).toEqual([
      "this is not JSON, at line 1, column 2",
      "checklist is missing",
      "/checklist/limts: limts is not known here",
      undefined,
    ]);
    expect(err.map((text) => text.split(":")[0])).toEqual(["line 1", "line 2", "line 3"]);
  });

  test("refuses a line beyond measure without keeping it, and a line that is not UTF-8", async () => {
    const { status, rows } = await judged("x".repeat(LONGEST_LINE + 1), line(ohm(0.1)));
    expect(status).toBe(2);
    expect(rows.map((row) => row.problems[0]?.code)).toEqual(["line-too-long", undefined]);
    const bytes = await commandLineOf()(["judge", "--json"], Buffer.from([0xff, 0x0a]));
    expect(bytes.status).toBe(2);
    expect(JSON.parse(bytes.out[0] ?? "").problems[0].code).toBe("not-utf8");
  });

  test("judges nothing by a formula that cannot be used, and says where it stands", async () => {
    const limits = [{ max: "joints + asset.lenth * r_per_m" }];
    const { earth } = LEAD.properties;
    const checklist = { ...LEAD, properties: { earth: { ...earth, limits } } };
    const { rows } = await judged(line(ohm(0.1), checklist));
    expect(rows[0].overall).toBe("undecided");
    expect(rows[0].problems).toMatchObject([
      { pointer: "/checklist/properties/earth/limits/0/max", code: "unknown-name" },
    ]);
  });

  test("outlives a line that nests without end", async () => {
    const deep = `{"checklist":${"[".repeat(200_000)}${"]".repeat(200_000)},"answers":{}}`;
    const { status, rows } = await judged(deep, line(ohm(0.1)));
    expect([status, rows[0].problems[0].code, rows[1].overall]).toEqual([
      2,
      "document-too-deep",
      "pass",
    ]);
  });

  test("accepts the answers of the time before", async () => {
    const { checklist, ...rest } = JSON.parse(line(ohm(0.1)));
    const { status, rows } = await judged(
      JSON.stringify({ ...rest, checklist, previous: ohm(0.2) }),
    );
    expect([status, rows[0].overall]).toEqual([0, "pass"]);
  });
});
