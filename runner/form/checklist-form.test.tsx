import { act } from "react";
import { afterEach, describe, expect, it } from "vitest";
import { LEAD, PLAIN_LEAD } from "./testing/lead.ts";
import { type MountedForm, mountForm } from "./testing/mount.tsx";

let form: MountedForm;
afterEach(() => form.unmount());
const toFinish = async () => {
  for (let step = 0; step < 20 && !form.text().includes("By the limits of"); step += 1) {
    await form.press("Next");
  }
};

describe("a form", () => {
  it("presets nothing", async () => {
    form = await mountForm(PLAIN_LEAD);
    expect(form.page.querySelectorAll("[aria-pressed=true], input:checked")).toHaveLength(0);
    expect(form.page.querySelectorAll(".answer, .verdict")).toHaveLength(0);
    expect(form.changes).toEqual([]);
  });

  it("answers a check with o and n, and asks for what a fail demands", async () => {
    form = await mountForm(PLAIN_LEAD);
    await form.key("n");
    expect(form.changes.at(-1)?.answers).toEqual({ cable: "not-ok" });
    expect(form.text()).toContain("A fail asks for a photo, here or before you finish.");
    await form.key("o");
    expect(form.changes.at(-1)?.answers).toEqual({ cable: "ok" });
  });

  it("as a trial stands at the point it is told, and follows when another is named", async () => {
    form = await mountForm(PLAIN_LEAD, { at: "case" });
    expect(form.page.querySelector(".point-open")?.id).toBe("point-case");
    await form.again({ at: "plug" });
    expect(form.page.querySelector(".point-open")?.id).toBe("point-plug");
    await form.again({ at: "nowhere" });
    expect(form.page.querySelector(".point-open")?.id).toBe("point-plug");
  });

  it("does not take the focus from what is written beside it", async () => {
    const beside = document.createElement("input");
    document.body.append(beside);
    beside.focus();
    form = await mountForm(PLAIN_LEAD, { at: "width" });
    expect(form.page.querySelector(".point-open")?.id).toBe("point-width");
    expect(document.activeElement).toBe(beside);
    beside.remove();
  });

  it("leaves single keys alone where they are turned off", async () => {
    form = await mountForm(PLAIN_LEAD, { singleKeys: false });
    await form.key("o");
    expect(form.changes).toEqual([]);
  });

  it("answers a group by one declaration: checks only, exceptions kept, never a reading", async () => {
    form = await mountForm(PLAIN_LEAD, { clock: () => "10:42" });
    await form.press("Not OK");
    await form.press("All visual points satisfactory");
    expect(form.changes.at(-1)).toMatchObject({
      answers: { cable: "not-ok", plug: "ok" },
      declared: ["plug"],
    });
    expect(Object.keys(form.changes.at(-1)?.answers ?? {})).toEqual(["cable", "plug"]);
    expect(form.text()).toContain("Declared by you at 10:42 for 1 point.");
    await form.press("Undo");
    expect(form.changes.at(-1)).toEqual({
      answers: { cable: "not-ok" },
      evidence: {},
      declared: [],
      waits: {},
    });
  });

  it("takes a point out of the declaration when it gets an answer of its own", async () => {
    form = await mountForm(PLAIN_LEAD);
    await form.press("All visual points satisfactory");
    await form.openPoint("plug");
    await form.press("Not OK");
    expect(form.changes.at(-1)?.declared).toEqual(["cable"]);
  });

  it("hides what is not asked, keeps its answer and leaves it out of the count", async () => {
    form = await mountForm(LEAD, { initialAnswers: { case: "not-ok" } });
    await act(async () => {
      await import("@roundbook/schemas/formulas");
    });
    await form.press("All visual points satisfactory");
    await form.again({ particulars: { class: "II" } });
    for (let step = 0; step < 6; step += 1) {
      expect(form.text()).not.toContain("Metal case bonded?");
      if (form.text().includes("By the limits of")) break;
      await form.press("Next");
    }
    expect(form.changes.at(-1)?.answers.case).toBe("not-ok");
    expect(form.text()).toContain("5 points");
  });

  it("cannot be finished untouched", async () => {
    form = await mountForm(PLAIN_LEAD);
    await toFinish();
    expect(form.button("Sign and finish").disabled).toBe(true);
    await act(async () => form.button("Sign and finish").click());
    expect(form.finished).toEqual([]);
  });

  it("cannot be finished while a mandatory point is unanswered, unless it is declared not checked", async () => {
    form = await mountForm(PLAIN_LEAD, {
      initialAnswers: { cable: "ok", plug: "ok", continuity: { value: 0.2, unit: "Ohm" } },
    });
    await toFinish();
    expect(form.text()).toContain("Metal case bonded?");
    expect(form.button("Sign and finish").disabled).toBe(true);
    await form.press("Declare not checked");
    expect(form.button("Sign and finish").disabled).toBe(false);
    await form.press("Sign and finish");
    expect(form.finished).toHaveLength(1);
    expect(form.finished[0]?.answers.case).toEqual({ absent: { reason: "not-checked" } });
    expect(form.finished[0]?.judgement.complete).toBe(false);
    expect(form.finished[0]?.judgement.overall).not.toBe("pass");
  });

  it("leads from what is lacking to its point", async () => {
    form = await mountForm(PLAIN_LEAD, { initialAnswers: { cable: "ok", plug: "ok", case: "ok" } });
    await toFinish();
    await form.press("Go there: 2.1");
    expect(form.box().value).toBe("");
  });

  it("without a way to finish is a trial", async () => {
    form = await mountForm(PLAIN_LEAD, { onFinish: undefined, initialAnswers: { cable: "ok" } });
    await toFinish();
    expect(form.text()).toContain("A trial: nothing is kept.");
    expect(form.text()).not.toContain("Sign and finish");
  });

  it("shows the cautions before the first point and tells when they were read", async () => {
    let read = 0;
    form = await mountForm(
      { ...PLAIN_LEAD, cautions: ["Disconnect first."] },
      {
        onCautionsRead: () => {
          read += 1;
        },
      },
    );
    expect(form.text()).toContain("Disconnect first.");
    expect(form.text()).not.toContain("Cable free of damage?");
    await form.press("Read and understood");
    expect(read).toBe(1);
    expect(form.text()).toContain("Cable free of damage?");
  });
});
