import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import type { Checklist } from "@roundbook/schemas";
import { act } from "react";
import { createRoot } from "react-dom/client";
import { expect, test } from "vitest";
import { addGroup, addPoint, changePoint } from "../model/commands.ts";
import { emptyDocument } from "../model/draft-document.ts";
import { setRepeat } from "../model/repeat-edit.ts";
import { IssuedDocument } from "./issued-document.tsx";

const lead = (): Checklist => {
  const begun = addGroup(
    {
      ...emptyDocument("Lead"),
      cautions: ["Unplug it first"],
      particulars: { length: { title: "Length", type: "number", unit: "m" } },
      values: { joints: { title: "Joints", const: 0.1, unit: "Ohm", basis: "Own practice" } },
    },
    "Measure",
  );
  const { document } = addPoint(begun, "reading", "Earth continuity", "measure");
  const leaves = setRepeat(document, "measure", { each: "Leaf", count: 2 });
  const stops = [
    { after: ["earth_continuity"], on: ["fail" as const], groups: ["measure"], say: "Stop" },
  ];
  return changePoint({ ...leaves, stops }, "earth_continuity", (point) => ({
    ...point,
    quantity: { unit: "Ohm", decimals: 3 },
    limits: [{ max: "joints * asset.length", basis: "IEC 60228 class 5" }],
  }));
};

test("an issue shows all it says: cautions, what it needs and counts with, each limit with its basis", async () => {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  const page = document.createElement("div");
  const root = createRoot(page);
  await act(async () =>
    root.render(
      <MessagesProvider messages={deskEnglish}>
        <IssuedDocument document={lead()} />
      </MessagesProvider>,
    ),
  );
  const text = (page.textContent ?? "").replaceAll("\u00a0", " ");
  for (const words of [
    "Unplug it first",
    "Length",
    "a number in m",
    "0.1 Ω, because: Own practice",
    "Fails above joints × length. Because: IEC 60228 class 5.",
    "asked for each Leaf: 2",
    "after a fail of Earth continuity it does not ask Measure: Stop",
    "a reading, in Ω, 3 decimals, must be answered",
  ])
    expect(text).toContain(words);
  await act(async () => root.unmount());
});
