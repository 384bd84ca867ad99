import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, test } from "vitest";
import { addGroup, addPoint, removePoint } from "../model/commands.ts";
import { type DraftDocument, emptyDocument } from "../model/draft-document.ts";
import { Trial } from "./trial.tsx";

let page: HTMLElement;
let root: Root;
beforeEach(() => {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  page = document.createElement("div");
  document.body.append(page);
  root = createRoot(page);
});
afterEach(async () => {
  await act(async () => root.unmount());
  page.remove();
});

const draw = (list: DraftDocument) =>
  act(async () =>
    root.render(
      <MessagesProvider messages={deskEnglish}>
        <Trial document={list} at="firm" />
      </MessagesProvider>,
    ),
  );
const pressed = () =>
  [...page.querySelectorAll("button[aria-pressed=true], [aria-checked=true], input:checked")].map(
    (one) => one.getAttribute("aria-label") ?? one.closest("label, button")?.textContent ?? "",
  );

test("what is tried stays answered while points are added and taken away", async () => {
  const begun = addGroup(emptyDocument("Chair"), "Legs");
  const chair = addPoint(begun, "check", "Firm", "legs").document;
  await draw(chair);
  const answer = [...page.querySelectorAll("button")].find((one) => one.textContent === "OK");
  await act(async () => answer?.click());
  const before = pressed();
  expect(before).not.toEqual([]);
  const more = addPoint(chair, "check", "Level", "legs").document;
  await draw(more);
  expect(page.textContent).toContain("Level");
  expect(pressed()).toEqual(before);
  await draw(removePoint(more, "level"));
  expect(pressed()).toEqual(before);
});
