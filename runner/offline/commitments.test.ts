import { describe, expect, it } from "vitest";
import { Commitments } from "./make-entry.ts";

const DRAWING = "d".repeat(64);

describe("what a person wrote", () => {
  it("is committed in text points, of every member of a repeat too", async () => {
    const commitments = new Commitments();
    const answers = await commitments.answers(
      { remarks: "Dry.", "remarks@left": "Wet.", colour: "red" },
      new Set(["remarks"]),
    );
    expect(answers).toEqual({
      remarks: { commit: expect.stringMatching(/^[0-9a-f]{64}$/) },
      "remarks@left": { commit: expect.stringMatching(/^[0-9a-f]{64}$/) },
      colour: "red",
    });
    expect(commitments.contents.map(({ text }) => text)).toEqual(["Dry.", "Wet."]);
  });

  it("is committed as the name that signed, with its drawing beside it", async () => {
    const commitments = new Commitments();
    const { told } = await commitments.answers(
      { told: { signedBy: "Dag Ruskeen", drawing: DRAWING } },
      new Set(),
    );
    expect(told).toEqual({
      signedBy: { commit: commitments.contents[0]?.commit },
      drawing: DRAWING,
    });
    expect(commitments.contents[0]?.text).toBe("Dag Ruskeen");
  });

  it("stands on a bottle as it is, so that its result finds it", async () => {
    const commitments = new Commitments();
    const sample = { sample: "B-17", takenAt: "2026-10-13T10:06:18.000Z" };
    expect(await commitments.answers({ legionella: sample }, new Set())).toEqual({
      legionella: sample,
    });
    expect(commitments.contents).toEqual([]);
  });
});
