import { compileJudge } from "@roundbook/schemas";
import { act } from "react";
import { createRoot } from "react-dom/client";
import { describe, expect, it } from "vitest";
import { InspectionView, type InspectionViewProps } from "./inspection-view.tsx";
import { checklistOf } from "./testing/kinds.ts";
import { PLAIN_LEAD } from "./testing/lead.ts";
import "./testing/mount.tsx";

const answers = {
  cable: "ok",
  plug: { absent: { reason: "not-applicable", note: { commit: "b".repeat(64) } } },
  continuity: { value: 0.241, unit: "Ohm" },
} as const;
const judgement = compileJudge(PLAIN_LEAD).judge({ particulars: {}, answers });

async function draw(more: Partial<InspectionViewProps> = {}): Promise<string> {
  const page = document.createElement("div");
  const root = createRoot(page);
  const view = (
    <InspectionView
      document={PLAIN_LEAD}
      issue={3}
      answers={answers}
      judgement={judgement}
      photoUrl={async () => undefined}
      {...more}
    />
  );
  await act(async () => root.render(view));
  const text = page.textContent ?? "";
  await act(async () => root.unmount());
  return text;
}

describe("a sealed inspection", () => {
  it("is printed with the limits that applied then, not those of today's document", async () => {
    const lenient = structuredClone(PLAIN_LEAD) as never as Record<
      "properties",
      Record<string, object>
    >;
    Object.assign(lenient.properties.continuity ?? {}, { limits: [{ max: 9 }] });
    const text = await draw({ document: lenient as never });
    expect(text).toContain("max 0.233\u00a0Ω");
    expect(text).toContain("0.008\u00a0Ω above.");
  });

  it("shows the verdict of a check as of anything else that is judged", async () => {
    expect(judgement.points.cable?.verdict).toBe("pass");
    expect(await draw()).toMatch(/OKPass/);
  });

  it("shows a point nobody answered as not answered, without a verdict", async () => {
    expect(await draw()).toContain("Metal case bonded?Not answered");
  });

  it("shows texts that still stand, and says when one was erased", async () => {
    expect(await draw({ contents: { ["b".repeat(64)]: "No plug here" } })).toContain(
      "No plug here",
    );
    expect(await draw()).toContain("erased");
  });

  it("marks what was declared for its group", async () => {
    expect(await draw({ declared: ["cable"] })).toContain("Declared for its group");
  });

  it("from before there were repeats and samples is printed like any other", async () => {
    const { repeats: _, pending: __, ...old } = judgement;
    expect(await draw({ judgement: old as never })).toContain("Metal case bonded?");
  });

  it("prints the numbers a value was worked out from", async () => {
    const document = checklistOf({
      drop: {
        $ref: "#/$defs/calculated",
        title: "Drop",
        calculate: "62 - 52",
        quantity: { unit: "K" },
      },
    });
    const drop = { ...judgement.points.continuity, limits: [], value: 10, working: "62 − 52" };
    const text = await draw({ document, judgement: { ...judgement, points: { drop } as never } });
    expect(text).toContain("10\u00a0K");
    expect(text).toContain("= 62 − 52");
  });

  it("prints each member of a repeat under its name, and a stopped point struck", async () => {
    const document = checklistOf(
      {
        gap: { $ref: "#/$defs/check", title: "Gap?", limits: [{ accept: ["ok"] }] },
        latch: { $ref: "#/$defs/check", title: "Latches?", limits: [{ accept: ["ok"] }] },
      },
      {
        groups: [
          { id: "rest", title: "Rest", points: ["latch"] },
          {
            id: "leaves",
            title: "Leaves",
            points: ["gap"],
            repeat: { each: "Leaf", members: [{ id: "left", title: "Leaf left" }] },
          },
        ],
        stops: [{ after: ["latch"], on: ["fail"], groups: ["leaves"], say: "Close it." }],
      },
    );
    const given = { latch: "not-ok", "gap@left": "ok" } as const;
    const text = await draw({
      document,
      answers: given,
      judgement: compileJudge(document).judge({ particulars: {}, answers: given }),
    });
    expect(text).toContain("Leaf leftLeaves");
    expect(text).toContain("Not asked after “Latches?”: Close it.");
    expect(text).toContain("kept, not counted: OK");
  });
});
