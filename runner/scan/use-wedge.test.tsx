// @vitest-environment happy-dom
import { flushSync } from "react-dom";
import { createRoot } from "react-dom/client";
import { afterEach, beforeEach, expect, test } from "vitest";
import { useWedge } from "./use-wedge.ts";

let at = 0;
const now = () => at;
const codes: string[] = [];
const Screen = () => {
  useWedge(now, (code) => codes.push(code));
  return (
    <>
      <input />
      <button type="button">Leave</button>
    </>
  );
};

let host: HTMLElement;
let unmount: () => void;
beforeEach(() => {
  codes.length = 0;
  host = document.body.appendChild(document.createElement("div"));
  const root = createRoot(host);
  flushSync(() => root.render(<Screen />));
  unmount = () => flushSync(() => root.unmount());
});
afterEach(() => {
  unmount();
  host.remove();
});

/** Sends 4012 and Enter as a scanner does; tells whether the Enter was kept from the page. */
const scan = (target: Element): boolean => {
  let kept = false;
  for (const key of [..."4012", "Enter"]) {
    at += 8;
    const event = new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true });
    target.dispatchEvent(event);
    kept = event.defaultPrevented;
  }
  return kept;
};
const find = (what: string): Element => host.querySelector(what) ?? document.body;

test("a scan while nothing has the focus is heard", () => {
  scan(document.body);
  expect(codes).toEqual(["4012"]);
});

test("a scan while a field has the focus stays in the field, its Enter too", () => {
  expect(scan(find("input"))).toBe(false);
  expect(codes).toEqual([]);
});

test("the Enter of a scan does not press the button that has the focus", () => {
  expect(scan(find("button"))).toBe(true);
  expect(codes).toEqual(["4012"]);
});

test("a page that was left hears nothing", () => {
  unmount();
  scan(document.body);
  expect(codes).toEqual([]);
});
