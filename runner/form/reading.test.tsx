import { afterEach, describe, expect, it } from "vitest";
import { PLAIN_LEAD } from "./testing/lead.ts";
import { type MountedForm, mountForm } from "./testing/mount.tsx";

let form: MountedForm;
afterEach(() => form.unmount());

/** Opens the form at its earth continuity reading. */
async function atContinuity(more: Parameters<typeof mountForm>[1] = {}) {
  form = await mountForm(PLAIN_LEAD, {
    initialAnswers: { cable: "ok", plug: "ok", grip: 4, width: { value: 25, unit: "mm" } },
    ...more,
  });
  await form.press("Next: Measure");
}
const kept = () => form.changes.at(-1)?.answers.continuity;
const verdict = () => form.page.querySelector("#point-continuity .verdict")?.textContent ?? null;

describe("a reading", () => {
  it("is not prefilled, not even from the last one", async () => {
    await atContinuity({
      previous: { continuity: { value: 0.198, unit: "Ohm", on: "2026-04-30" } },
    });
    expect(form.box().value).toBe("");
    expect(form.text()).toContain("30\u00a0Apr");
    expect(form.changes).toEqual([]);
  });

  it("that was not taken shows its limits and no verdict, least of all a pass", async () => {
    await atContinuity();
    expect(form.text()).toContain("max 0.233");
    expect(verdict()).toBeNull();
    expect(form.page.querySelector("#point-continuity")?.textContent).not.toContain("Pass");
  });

  it("is judged as it is typed, with its distance from the limit", async () => {
    await atContinuity();
    await form.type("0.24");
    expect(verdict()).toBe("Fail");
    expect(form.text()).toContain("0.007\u00a0Ω above.");
    await form.type("0.22");
    expect(verdict()).toBe("Pass");
    await form.type("0");
    expect(kept()).toEqual({ value: 0, unit: "Ohm" });
  });

  it("takes a comma for a point", async () => {
    await atContinuity();
    await form.type("0,31");
    expect(kept()).toEqual({ value: 0.31, unit: "Ohm" });
    expect(verdict()).toBe("Fail");
  });

  it("with a comparator that straddles the limit is undecided", async () => {
    await atContinuity();
    await form.type("0.3");
    await form.key("<", form.box());
    expect(form.box().value).toBe("<0.3");
    expect(kept()).toEqual({ value: 0.3, unit: "Ohm", comparator: "<" });
    expect(verdict()).toBe("Undecided");
    expect(form.text()).toContain("Somewhere below 0.3\u00a0Ω");
  });

  it("keeps its figures when the unit is switched: nothing is converted", async () => {
    await atContinuity();
    await form.type("221");
    await form.press("in mΩ");
    expect(form.box().value).toBe("221");
    expect(kept()).toEqual({ value: 221, unit: "mOhm" });
    expect(verdict()).toBe("Pass");
  });

  it("that becomes unreadable is no answer any more", async () => {
    await atContinuity();
    await form.type("0.2");
    await form.type("1,000.5");
    expect(kept()).toBeUndefined();
    expect(verdict()).toBeNull();
    expect(form.text()).toContain("is not a number");
  });

  it.each(["1e-3", "2.5k", "0.1 MΩ", "NaN", "1/4", "２"])(
    "that came as %s is refused as it came, never taken for the digits in it",
    async (text) => {
      await atContinuity();
      await form.type(text);
      expect(form.box().value).toBe(text);
      expect(kept()).toBeUndefined();
      expect(verdict()).toBeNull();
      expect(form.text()).toContain("is not a number");
    },
  );

  it("outside what is usual is asked about before going on", async () => {
    await atContinuity();
    await form.type("531");
    expect(form.text()).toContain("531\u00a0Ω? Usual is 0 to 20.");
    await form.press("Next");
    expect(form.box().value).toBe("531");
    await form.press("Keep");
    expect(form.text()).not.toContain("Usual is");
    await form.press("Next: 2.2");
    expect(form.page.querySelector("#point-case .strip")).not.toBeNull();
  });

  it("goes on with Enter", async () => {
    await atContinuity();
    await form.type("0.2");
    await form.key("Enter", form.box());
    expect(form.page.querySelector("#point-case .strip")).not.toBeNull();
  });

  it("can be cleared", async () => {
    await atContinuity();
    await form.type("0.2");
    const clear = [...form.page.querySelectorAll("button")].find(
      ({ textContent }) => textContent === "Clear",
    );
    clear?.focus();
    await form.press("Clear");
    expect(document.activeElement).toBe(form.box());
    expect(kept()).toBeUndefined();
    expect(form.box().value).toBe("");
  });

  it("may be declared not measured, and only an allowed reason leaves it out of the count", async () => {
    await atContinuity();
    await form.press("Not measured");
    const labels = [...form.page.querySelectorAll(".choice")].map((label) => label.textContent);
    expect(labels[0]).toBe("Not measurable");
    expect(labels.slice(1).every((label) => label?.endsWith("stays undecided"))).toBe(true);
    expect(form.page.querySelectorAll("input:checked")).toHaveLength(0);
  });
});
