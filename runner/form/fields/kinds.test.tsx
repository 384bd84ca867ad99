import { afterEach, describe, expect, it } from "vitest";
import { CRACKS, checklistOf, FAULTS, SERVICED, SIGNED } from "../testing/kinds.ts";
import { type MountedForm, mountForm } from "../testing/mount.tsx";

let form: MountedForm;
afterEach(() => form.unmount());
const kept = (id: string) => form.changes.at(-1)?.answers[id];
const verdict = (id: string) =>
  form.page.querySelector(`[id="point-${id}"] .verdict`)?.textContent ?? null;
const open = async (id: string, point: Parameters<typeof checklistOf>[0][string]) => {
  form = await mountForm(checklistOf({ [id]: point }), {
    on: "2026-10-13",
    signer: "Dag Ruskeen",
    now: () => Date.UTC(2026, 9, 13, 9, 42),
  });
};

describe("a choice of several", () => {
  it("has no tick that nobody made", async () => {
    await open("faults", FAULTS);
    expect(form.page.querySelectorAll("input:checked")).toHaveLength(0);
    expect(form.changes).toEqual([]);
    expect(verdict("faults")).toBeNull();
  });

  it("keeps the order of the checklist, whatever was ticked first", async () => {
    await open("faults", FAULTS);
    await form.tick("Leak");
    await form.tick("Rust");
    expect(kept("faults")).toEqual(["rust", "leak"]);
    expect(verdict("faults")).toBe("Fail");
  });

  it("of which the last tick is taken away is no answer any more", async () => {
    await open("faults", FAULTS);
    await form.tick("Nothing");
    expect(verdict("faults")).toBe("Pass");
    await form.tick("Nothing");
    expect(kept("faults")).toBeUndefined();
    expect(verdict("faults")).toBeNull();
  });
});

describe("a count", () => {
  it("never begins with a nought that nobody entered", async () => {
    await open("cracks", CRACKS);
    expect(form.box().value).toBe("");
    expect(form.button("One fewer").disabled).toBe(true);
    expect(form.changes).toEqual([]);
    expect(form.text()).toContain("max 2");
    expect(verdict("cracks")).toBeNull();
  });

  it("steps from what was entered, never below nought", async () => {
    await open("cracks", CRACKS);
    await form.press("One more");
    expect(kept("cracks")).toBe(1);
    await form.press("One fewer");
    expect(kept("cracks")).toBe(0);
    expect(form.button("One fewer").disabled).toBe(true);
    await form.type("3");
    expect(kept("cracks")).toBe(3);
    expect(verdict("cracks")).toBe("Fail");
  });

  it("of none is said, not assumed", async () => {
    await open("cracks", CRACKS);
    await form.press("None");
    expect(kept("cracks")).toBe(0);
    expect(verdict("cracks")).toBe("Pass");
  });

  it.each(["2.5", "-1", "1e2", "a few"])("is no %s", async (text) => {
    await open("cracks", CRACKS);
    await form.type(text);
    expect(kept("cracks")).toBeUndefined();
    expect(form.text()).toContain("is no whole number");
    expect(verdict("cracks")).toBeNull();
  });
});

describe("a date", () => {
  it("is never preset, not even with today", async () => {
    await open("serviced", SERVICED);
    expect(form.page.querySelector<HTMLInputElement>("input[type=date]")?.value).toBe("");
    expect(form.changes).toEqual([]);
    expect(form.text()).toContain("not before 13\u00a0October 2025");
    expect(verdict("serviced")).toBeNull();
  });

  it("is today's, by the day at the asset, when the person says so", async () => {
    await open("serviced", SERVICED);
    await form.press("Today");
    expect(kept("serviced")).toBe("2026-10-13");
    expect(verdict("serviced")).toBe("Pass");
  });

  it("before the earliest fails, and says which day that is", async () => {
    await open("serviced", SERVICED);
    await form.write("Last serviced", "2025-10-12");
    expect(verdict("serviced")).toBe("Fail");
    expect(form.text()).toContain("Before 13\u00a0October 2025.");
  });
});

describe("a signature", () => {
  it("is no one's until a name is written", async () => {
    await open("told", SIGNED);
    expect(form.page.querySelector<HTMLInputElement>("input")?.value).toBe("");
    expect(form.changes).toEqual([]);
  });

  it("is a name; the drawing is offered only beside one", async () => {
    await open("told", SIGNED);
    expect(form.text()).not.toContain("Add a drawn signature");
    await form.press("Sign as Dag Ruskeen");
    expect(kept("told")).toEqual({ signedBy: "Dag Ruskeen" });
    expect(form.text()).toContain("Add a drawn signature");
    await form.write("Name of the person who signs", "");
    expect(kept("told")).toBeUndefined();
  });
});
