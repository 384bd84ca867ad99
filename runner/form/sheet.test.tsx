import type { Checklist, PointDefinition } from "@roundbook/schemas";
import { act } from "react";
import { afterEach, describe, expect, it } from "vitest";
import { CRACKS, checklistOf } from "./testing/kinds.ts";
import { type MountedForm, mountForm } from "./testing/mount.tsx";

let form: MountedForm;
afterEach(() => form.unmount());
const kept = () => form.changes.at(-1)?.answers;

const GAP: PointDefinition = {
  $ref: "#/$defs/reading",
  title: "Gap at the top",
  quantity: { unit: "mm" },
  limits: [{ max: 4 }],
  ask: { mandatory: true },
};
const DOORS: Checklist = checklistOf(
  { gap_top: GAP },
  {
    groups: [
      {
        id: "leaves",
        title: "Leaves",
        points: ["gap_top"],
        repeat: {
          each: "Leaf",
          members: [
            { id: "left", title: "Leaf left" },
            { id: "right", title: "Leaf right" },
          ],
        },
      },
    ],
  },
);
const check = (title: string): PointDefinition => ({
  $ref: "#/$defs/check",
  title,
  limits: [{ accept: ["ok"] }],
  ask: { mandatory: true },
});
const STOPPED: Checklist = checklistOf(
  { earth: check("Earth continuity"), flash: check("Flash test"), cracks: CRACKS },
  { stops: [{ after: ["earth"], on: ["fail"], points: ["flash"], say: "Take it out of use." }] },
);

describe("a repeat", () => {
  it("is asked once for each member, under the name of its answer", async () => {
    form = await mountForm(DOORS);
    expect(form.text()).toContain("Leaf left");
    expect(form.page.querySelector('[id="point-gap_top@left"]')).not.toBeNull();
    await form.type("3");
    await form.press("Next: Leaf right");
    await form.type("5");
    expect(kept()).toEqual({
      "gap_top@left": { value: 3, unit: "mm" },
      "gap_top@right": { value: 5, unit: "mm" },
    });
    expect(form.page.querySelector('[id="point-gap_top@right"] .verdict')?.textContent).toBe(
      "Fail",
    );
  });

  it("lacks each member nobody answered, by the member's name", async () => {
    form = await mountForm(DOORS, { initialAnswers: { "gap_top@left": { value: 3, unit: "mm" } } });
    await form.press("Next: Leaf right");
    await form.press("Next: finish");
    expect(form.text()).toContain("Leaf right: Gap at the top");
    expect(form.text()).not.toContain("Leaf left: Gap at the top");
    expect(form.button("Sign and finish").disabled).toBe(true);
    await form.press("Declare not checked");
    expect(kept()).toMatchObject({ "gap_top@right": { absent: { reason: "not-checked" } } });
  });

  it("names the member in its defect", async () => {
    form = await mountForm(DOORS, {
      initialAnswers: {
        "gap_top@left": { value: 3, unit: "mm" },
        "gap_top@right": { value: 5, unit: "mm" },
      },
    });
    await form.press("Next: Leaf right");
    await form.press("Next: finish");
    expect(form.text()).toContain("Leaf right: Gap at the top: 5\u00a0mm");
  });
});

describe("a stop", () => {
  it("strikes the points it stops, says why, and asks for what is left", async () => {
    form = await mountForm(STOPPED);
    await form.press("Not OK");
    const flash = form.page.querySelector('[id="point-flash"]');
    expect(flash?.classList.contains("point-stopped")).toBe(true);
    expect(flash?.textContent).toContain("Not asked after “Earth continuity”: Take it out of use.");
    expect(flash?.querySelector("button")).toBeNull();
    await form.press("Next: 1.3");
    expect(form.page.querySelector(".point-open")?.id).toBe("point-cracks");
  });

  it("keeps the answers of a stopped point and counts them no more", async () => {
    form = await mountForm(STOPPED, { initialAnswers: { earth: "ok", flash: "not-ok" } });
    expect(form.page.querySelector("#point-flash")?.textContent).toContain("Not OK");
    await form.openPoint("earth");
    await form.press("Not OK");
    expect(kept()).toEqual({ earth: "not-ok", flash: "not-ok" });
    const flash = form.page.querySelector("#point-flash");
    expect(flash?.textContent).toContain("kept, not counted: Not OK");
    expect(flash?.querySelector(".verdict")).toBeNull();
    await form.press("OK");
    expect(form.page.querySelector("#point-flash .verdict")?.textContent).toBe("Fail");
  });
});

describe("a calculated point", () => {
  it("is worked out, takes no answer and holds nobody up", async () => {
    form = await mountForm(
      checklistOf({
        a: { $ref: "#/$defs/reading", title: "A", quantity: { unit: "mm" } },
        sum: {
          $ref: "#/$defs/calculated",
          title: "Twice A",
          calculate: "answers.a * 2",
          quantity: { unit: "mm" },
          limits: [{ max: 5 }],
        },
      }),
    );
    await act(async () => {
      await import("@roundbook/schemas/formulas");
    });
    await form.openPoint("sum");
    expect(form.page.querySelector("#point-sum input, #point-sum .strip")).toBeNull();
    expect(form.page.querySelector("#point-sum .verdict")?.textContent).not.toBe("Pass");
    await form.openPoint("a");
    await form.type("3");
    expect(form.page.querySelector("#point-sum")?.textContent).toContain("6\u00a0mm");
    await form.openPoint("sum");
    expect(form.page.querySelector("#point-sum .equation")?.textContent).toBe("= 3 × 2");
    expect(form.page.querySelector("#point-sum .verdict")?.textContent).toBe("Fail");
    expect(kept()).toEqual({ a: { value: 3, unit: "mm" } });
  });
});

describe("a point named by its checklist alone", () => {
  it("is opened at its first member", async () => {
    form = await mountForm(DOORS, { at: "gap_top" });
    expect(form.page.querySelector(".point-open")?.id).toBe("point-gap_top@left");
  });
});
