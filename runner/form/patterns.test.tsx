import { act } from "react";
import { afterEach, describe, expect, it } from "vitest";
import { checklistOf } from "./testing/kinds.ts";
import { type MountedForm, mountForm } from "./testing/mount.tsx";

const TAG = {
  $ref: "#/$defs/text",
  title: "Number on the seal",
  pattern: "^[A-Z]{2}[0-9]{4}$",
} as const;
const TAGGED = checklistOf({ tag: TAG });

let form: MountedForm;
afterEach(() => form.unmount());

const filledWith = async (tag: string) => {
  form = await mountForm(TAGGED, { initialAnswers: { tag } });
  await act(async () => {
    await import("@roundbook/schemas/patterns");
  });
};

describe("a text with a pattern", () => {
  it("says at its field that it does not match, and is kept as written", async () => {
    await filledWith("seal 12");
    await form.openPoint("tag");
    expect(form.page.querySelector(".point-open .danger")?.textContent).toContain(
      "not written as it must be",
    );
    expect(form.page.querySelector("textarea")?.value).toBe("seal 12");
  });

  it("that does not match holds finishing up, with a way there", async () => {
    await filledWith("seal 12");
    await form.press("Next");
    expect(form.button("Sign and finish").disabled).toBe(true);
    await form.press("Go there");
    expect(form.page.querySelector(".point-open")?.id).toBe("point-tag");
    expect(form.page.querySelector("textarea")?.value).toBe("seal 12");
  });

  it("says its pattern only where nothing says it in words", async () => {
    await filledWith("seal 12");
    await form.openPoint("tag");
    expect(form.text()).toContain("^[A-Z]{2}[0-9]{4}$");
    await form.unmount();
    const description = "Two letters and four figures.";
    const tag = { ...TAG, description };
    form = await mountForm(checklistOf({ tag }), { initialAnswers: { tag: "seal 12" } });
    await form.openPoint("tag");
    expect(form.text()).toContain("Is not written as it must be.");
    expect(form.text()).not.toContain("[A-Z]");
  });

  it("that matches is finished as it stands", async () => {
    await filledWith("AB1234");
    await form.press("Next");
    await form.press("Sign and finish");
    expect(form.finished[0]?.answers).toEqual({ tag: "AB1234" });
  });
});
