import { afterEach, expect, it } from "vitest";
import { checklistOf } from "./testing/kinds.ts";
import { type MountedForm, mountForm } from "./testing/mount.tsx";

let form: MountedForm;
afterEach(() => form.unmount());

const DOOR = checklistOf(
  {
    seals: {
      $ref: "#/$defs/check",
      title: "Seals whole?",
      limits: [{ accept: ["ok"], basis: "Clause 7" }],
      ask: { mandatory: true },
    },
    gap: {
      $ref: "#/$defs/reading",
      title: "Gap",
      quantity: { unit: "mm" },
      limits: [{ max: 4, basis: "Clause 8" }],
    },
    latch: { $ref: "#/$defs/check", title: "Latches?", limits: [{ accept: ["ok"] }] },
  },
  {
    language: "en",
    stops: [{ after: ["seals"], on: ["fail"], points: ["latch"], say: "Close the door." }],
    wording: {
      cy: {
        "/properties/seals/title": "Seliau yn gyfan?",
        "/properties/gap/limits/0/basis": "Cymal 8",
        "/stops/0/say": "Caewch y drws.",
        "/groups/0/title": "Popeth",
      },
    },
  },
);

it("a checklist is shown in the reader's language, and what has no wording in its own", async () => {
  form = await mountForm(DOOR, { language: "cy-GB" });
  expect(form.text()).toContain("Popeth");
  expect(form.text()).toContain("Seliau yn gyfan?");
  expect(form.text()).toContain("Latches?");
  await form.openPoint("gap");
  expect(form.text()).toContain("Cymal 8");
});

it("what is kept and judged says the document's own words in every language", async () => {
  form = await mountForm(DOOR, { language: "cy" });
  await form.press("Not OK");
  expect(form.text()).toContain("Caewch y drws.");
  await form.openPoint("gap");
  await form.type("3");
  await form.press("Next");
  await form.press("Sign and finish");
  const { judgement } = form.finished[0] ?? {};
  expect(judgement?.points.latch?.why.params.say).toBe("Close the door.");
  expect(judgement?.points.gap?.limits[0]?.basis).toBe("Clause 8");
});
