// @vitest-environment happy-dom
import { act, type ReactNode } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { AnswerStrip } from "./answer-strip.tsx";
import { Due } from "./due.tsx";
import { LimitLine } from "./limit-line.tsx";
import { LineField } from "./line-field.tsx";
import { Pad, type PadKey } from "./pad.tsx";
import { Row } from "./row.tsx";
import { Sheet } from "./sheet.tsx";
import { Verdict } from "./verdict.tsx";

let root: Root;
let page: HTMLElement;

beforeEach(() => {
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: true });
  page = document.body.appendChild(document.createElement("div"));
  root = createRoot(page);
});

afterEach(() => {
  act(() => root.unmount());
  page.remove();
});

const show = (node: ReactNode) => act(() => root.render(node));
const press = (element: Element | null | undefined) =>
  act(() => element?.dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true })));
const names = {
  pad: "Figures",
  less: "Less than",
  more: "More than",
  minus: "Minus",
  decimal: "Decimal sign",
  delete: "Delete",
};

describe("what was not judged", () => {
  test.each(["not-counted", "not-evaluated"] as const)("%s has a word and no mark", (verdict) => {
    show(<Verdict verdict={verdict} word="Not counted" />);
    expect(page.textContent).toBe("Not counted");
    expect(page.querySelector("svg")).toBeNull();
  });

  test("an undecided verdict never borrows the mark of a pass", () => {
    show(<Verdict verdict="undecided" word="Undecided" live />);
    expect(page.querySelector(".mark-pass, .verdict-pass")).toBeNull();
    expect(page.querySelector('[role="status"]')?.textContent).toBe("Undecided");
  });
});

test("due words are bold only on the last day and past it", () => {
  const due = (today: number) => (
    <Due earliest={1} due={5} latest={9} today={today}>
      words
    </Due>
  );
  const classAt = (today: number) => {
    show(due(today));
    return page.querySelector(".due-text")?.className;
  };
  expect(classAt(5)).toBe("due-text due-in-window");
  expect(classAt(9)).toBe("due-text due-last-day");
  expect(classAt(10)).toBe("due-text due-over");
});

test("an answer strip presets nothing and reports the value pressed", () => {
  const chosen: string[] = [];
  const options = [
    { value: "ok", label: "OK" },
    { value: "not-ok", label: "Not OK" },
  ];
  show(
    <AnswerStrip label="Sound?" options={options} chosen={null} onChoose={(v) => chosen.push(v)} />,
  );
  expect(page.querySelectorAll('[aria-pressed="true"]')).toHaveLength(0);
  press(page.querySelectorAll("button")[1]);
  expect(chosen).toEqual(["not-ok"]);
});

test("the pad writes the locale's sign, and the left hand's column comes first", () => {
  const keys: PadKey[] = [];
  const pad = (leftHanded: boolean) => (
    <Pad
      decimal=","
      names={names}
      onKey={(key) => keys.push(key)}
      primary={{ label: "Next", onPress: () => {} }}
      leftHanded={leftHanded}
    />
  );
  const first = () => page.querySelector(".pad > button");
  show(pad(false));
  expect(first()?.textContent).toBe("1");
  press(page.querySelector('[aria-label="Decimal sign"]'));
  press(page.querySelector('[aria-label="Minus"]'));
  press(page.querySelector('[aria-label="Delete"]'));
  expect(keys).toEqual([",", "-", "delete"]);
  show(pad(true));
  expect(first()?.getAttribute("aria-label")).toBe("Less than");
});

describe("a limit line", () => {
  const line = (unsure: boolean) => (
    <LimitLine
      description="0.241 Ω against at most 0.233"
      range={[0, 0.4]}
      ticks={[{ at: 0, label: "0" }]}
      bounds={[{ at: 0.233, side: "max", label: "max 0.233", unsure }]}
    />
  );

  test("hatches what lies outside a limit and says in words what it shows", () => {
    show(line(false));
    expect(page.querySelectorAll("rect")).toHaveLength(1);
    expect(page.querySelector('[role="img"]')?.getAttribute("aria-label")).toContain("0.241");
  });

  test("an unsure limit is dashed and hatches nothing", () => {
    show(line(true));
    expect(page.querySelectorAll("rect")).toHaveLength(0);
    expect(page.querySelector("line[stroke-dasharray]")).not.toBeNull();
  });
});

test("a row is one target, and its router takes plain clicks only", () => {
  const followed: string[] = [];
  show(
    <Row
      number="4012"
      name="Ladder"
      href="/assets/4012"
      onFollow={(href) => followed.push(href)}
    />,
  );
  const link = page.querySelector("a");
  link?.addEventListener("click", (event) => event.ctrlKey && event.preventDefault());
  act(() =>
    link?.dispatchEvent(
      new MouseEvent("click", { bubbles: true, cancelable: true, ctrlKey: true }),
    ),
  );
  expect(followed).toEqual([]);
  press(link);
  expect(followed).toEqual(["/assets/4012"]);
  expect(page.querySelectorAll("a, button")).toHaveLength(1);
});

test("a field's error is tied to it and read out", () => {
  show(<LineField label="Serial number" error="Two assets have it." help="On the plate" />);
  const input = page.querySelector("input");
  const said = input?.getAttribute("aria-describedby")?.split(" ") ?? [];
  expect(said.map((id) => document.getElementById(id)?.textContent)).toEqual([
    "Two assets have it.",
    "On the plate",
  ]);
  expect(input?.getAttribute("aria-invalid")).toBe("true");
  expect(page.querySelector("label")?.htmlFor).toBe(input?.id);
});

test("a sheet closes by its word and by Escape", () => {
  let closed = 0;
  show(
    <Sheet title="Not completed" close="Close" onClose={() => (closed += 1)}>
      words
    </Sheet>,
  );
  expect(page.querySelector("dialog")?.open).toBe(true);
  press(page.querySelector("dialog button"));
  const escapeKey = new KeyboardEvent("keydown", {
    key: "Escape",
    bubbles: true,
    cancelable: true,
  });
  act(() => page.querySelector("h2")?.dispatchEvent(escapeKey));
  expect(closed).toBe(2);
});
