// @vitest-environment node
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const css = readFileSync(new URL("./tokens.css", import.meta.url), "utf8");

function tokensOf(selector: string) {
  const start = css.indexOf(`${selector} {`);
  const block = css.slice(start, css.indexOf("}", start));
  const found = [...block.matchAll(/--([a-z0-9-]+):\s*(#[0-9a-f]{6})/gi)];
  return Object.fromEntries(found.map(([, name, colour]) => [name, colour ?? ""]));
}

const light = tokensOf(":root");
const inks = {
  light,
  dark: { ...light, ...tokensOf(':root[data-ink="dark"]') },
  "dark by the device": { ...light, ...tokensOf(':root:not([data-ink="light"])') },
};

/** Relative luminance and contrast ratio as defined by WCAG 2.2. */
function luminance(colour: string) {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one = "", other = "") {
  const [high = 0, low = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
}

const textPairs = [
  ["ink", "paper"],
  ["ink2", "paper"],
  ["hand", "paper"],
  ["pass", "paper"],
  ["adv", "paper"],
  ["fail", "paper"],
  ["ink", "band"],
  ["ink2", "band"],
  ["hand", "band"],
  ["hand", "handwash"],
  ["ink", "handwash"],
  ["ink2", "handwash"],
  ["fail", "handwash"],
  ["on-hand", "hand"],
  ["on-fail", "fail"],
  ["paper", "ink"],
] as const;

// Level AAA of WCAG 2.2, 1.4.6, asks for 7 : 1; 1.4.11 asks for 3 : 1 of lines that carry meaning.
describe.each(Object.entries(inks))("measured contrast, %s", (_, tokens) => {
  test.each(textPairs)("%s on %s is at least 7 : 1", (text, ground) => {
    expect(contrast(tokens[text], tokens[ground])).toBeGreaterThanOrEqual(7);
  });

  test.each(["edge", "hand"] as const)("a line in %s on paper is at least 3 : 1", (line) => {
    expect(contrast(tokens[line], tokens.paper)).toBeGreaterThanOrEqual(3);
  });
});

test("the dark inks are the same, chosen by the device or by the person", () => {
  expect(inks["dark by the device"]).toEqual(inks.dark);
});

test("pure black on white measures 21 : 1", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
});
