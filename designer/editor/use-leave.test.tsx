import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, test } from "vitest";
import { useLeave } from "./use-leave.ts";

let taken: number;
let root: Root;
let field: HTMLInputElement;

beforeEach(async () => {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  taken = 0;
  const Field = () => {
    const leave = useLeave(() => {
      taken += 1;
    });
    return <input onBlur={leave} />;
  };
  const page = document.createElement("div");
  document.body.append(page);
  root = createRoot(page);
  await act(async () => root.render(<Field />));
  field = page.querySelector("input") as HTMLInputElement;
  field.focus();
});
afterEach(() => act(async () => root.unmount()));

const mouse = (type: string) =>
  act(async () => {
    window.dispatchEvent(new MouseEvent(type));
  });
const leave = () => act(async () => field.blur());

test("a field left with the keyboard is taken over at once", async () => {
  await leave();
  expect(taken).toBe(1);
});

test("a field left by a press is taken over at its release, once", async () => {
  await mouse("mousedown");
  await leave();
  expect(taken).toBe(0);
  await mouse("mouseup");
  expect(taken).toBe(1);
  await mouse("mousedown");
  await mouse("mouseup");
  expect(taken).toBe(1);
});
