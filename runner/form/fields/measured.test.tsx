import { act } from "react";
import { afterEach, describe, expect, it } from "vitest";
import { checklistOf, HOT, LAMPS, LEGIONELLA } from "../testing/kinds.ts";
import { type MountedForm, mountForm } from "../testing/mount.tsx";

let form: MountedForm;
afterEach(() => form.unmount());
const START = Date.UTC(2026, 9, 13, 10, 6, 18);
let time = START;
const kept = (id: string) => form.changes.at(-1)?.answers[id];
const verdict = (id: string) =>
  form.page.querySelector(`[id="point-${id}"] .verdict`)?.textContent ?? null;
const open = async (
  id: string,
  point: Parameters<typeof checklistOf>[0][string],
  more: Parameters<typeof mountForm>[1] = {},
) => {
  time = START;
  form = await mountForm(checklistOf({ [id]: point }), { now: () => time, ...more });
};
/** Lets the clock of the page go on, and the form look at it. */
const wait = async (seconds: number) => {
  time += seconds * 1000;
  await act(() => new Promise((resolve) => setTimeout(resolve, 300)));
};

describe("a reading after a wait", () => {
  it("cannot be written before its clock is started", async () => {
    await open("hot", HOT);
    expect(form.page.querySelector(".reading input")).toBeNull();
    expect(form.text()).toContain("Read at 1:00 after the start, or later.");
    expect(form.page.querySelector(".pad")).toBeNull();
  });

  it("opens when the wait is over, and keeps the seconds that went by", async () => {
    await open("hot", HOT);
    await form.press("Start the clock");
    await wait(42);
    expect(form.text()).toContain("0:42");
    expect(form.text()).toContain("opens at 1:00");
    await wait(22);
    await form.type("54.2");
    expect(kept("hot")).toEqual({ value: 54.2, unit: "Cel", elapsed: 64 });
    expect(verdict("hot")).toBe("Pass");
  });

  it("that was read early is undecided, however hot it was", async () => {
    await open("hot", HOT);
    await form.press("Start the clock");
    await wait(59.96);
    await form.press("Read early");
    await form.press("Read it now");
    await form.type("70");
    expect(kept("hot")).toEqual({ value: 70, unit: "Cel", elapsed: 59.9 });
    expect(verdict("hot")).toBe("Undecided");
    expect(form.text()).toContain("Read before 1:00: stays undecided.");
  });

  it("is as old as when it was read, not when it was typed", async () => {
    await open("hot", HOT);
    await form.press("Start the clock");
    await wait(30);
    await form.press("Read early");
    expect(form.text()).toContain("stays undecided");
    await form.press("Read it now");
    await wait(60);
    await form.type("70");
    expect(kept("hot")).toMatchObject({ elapsed: 30 });
    expect(form.changes.at(-1)?.evidence).toEqual({});
  });

  it("asks before it is read early, and keeps the words why beside the answer", async () => {
    await open("hot", HOT);
    await form.press("Start the clock");
    await wait(30);
    await form.press("Read early");
    await form.press("Keep waiting");
    expect(form.page.querySelector(".reading input")).toBeNull();
    await form.press("Read early");
    await form.words("The tap is needed");
    await form.press("Read it now");
    await form.type("70");
    expect(verdict("hot")).toBe("Undecided");
    expect(form.changes.at(-1)?.evidence).toEqual({
      hot: [{ kind: "note", note: "The tap is needed" }],
    });
  });

  it("goes on with its clock after a reload", async () => {
    await open("hot", HOT, { initialWaits: { hot: { startedAt: START - 50_000 } } });
    expect(form.text()).toContain("0:50");
    await wait(10);
    await form.type("51");
    expect(kept("hot")).toMatchObject({ elapsed: 60 });
  });

  it("is where the form opens while its clock runs", async () => {
    time = START;
    form = await mountForm(
      checklistOf(
        { legionella: LEGIONELLA, hot: HOT },
        {
          groups: [
            { id: "one", title: "One", points: ["legionella"] },
            { id: "two", title: "Two", points: ["hot"] },
          ],
        },
      ),
      { now: () => time, initialWaits: { hot: { startedAt: START - 5_000 } } },
    );
    expect(form.page.querySelector(".point-open")?.id).toBe("point-hot");
    expect(form.text()).toContain("0:05");
  });

  it("is taken back when the wait starts again", async () => {
    await open("hot", HOT);
    await form.press("Start the clock");
    await wait(61);
    await form.type("51");
    await form.press("Start again");
    expect(kept("hot")).toBeUndefined();
    expect(verdict("hot")).toBeNull();
    expect(form.page.querySelector(".reading input")).toBeNull();
  });
});

describe("several readings", () => {
  it("are undecided while one of them is missing", async () => {
    await open("lamps", LAMPS);
    expect(form.text()).toContain("3 readings. The lowest counts.");
    await form.type("2");
    expect(kept("lamps")).toEqual([{ value: 2, unit: "lx" }]);
    expect(verdict("lamps")).toBe("Undecided");
    await form.press("Next: reading 2");
    expect(form.box().value).toBe("");
    await form.type("0.8");
    await form.press("Next: reading 3");
    await form.type("1.4");
    expect(verdict("lamps")).toBe("Fail");
    const counts = form.page.querySelector(".taken-counts")?.closest("li")?.textContent;
    expect(counts).toBe("20.8\u00a0lx counts");
  });

  it("can each be written again", async () => {
    await open("lamps", LAMPS, {
      initialAnswers: { lamps: [2, 0.8, 1.4].map((value) => ({ value, unit: "lx" })) },
    });
    await form.openPoint("lamps");
    await act(async () => form.page.querySelectorAll<HTMLElement>(".taken-row")[1]?.click());
    expect(form.box().value).toBe("0.8");
    await form.type("1");
    expect(kept("lamps")).toEqual([2, 1, 1.4].map((value) => ({ value, unit: "lx" })));
    expect(verdict("lamps")).toBe("Pass");
  });
});

describe("a sample", () => {
  it("is pending until its result comes, and never a pass", async () => {
    await open("legionella", LEGIONELLA, { onFinish: () => {} });
    await form.write("Label on the bottle", "B-17");
    expect(kept("legionella")).toEqual({ sample: "B-17", takenAt: "2026-10-13T10:06:18.000Z" });
    expect(verdict("legionella")).toBe("Undecided");
    await form.press("Next: finish");
    expect(form.text()).toContain("Pending: result awaited of 1 sample.");
    expect(form.button("Sign and finish").disabled).toBe(false);
    expect(form.page.querySelector(".overall .verdict")?.textContent).toBe("Undecided");
  });

  it("may have its result at once", async () => {
    await open("legionella", LEGIONELLA);
    await form.write("Label on the bottle", "B-17");
    await form.press("Result known");
    await form.type("120");
    expect(kept("legionella")).toMatchObject({ result: { value: 120, unit: "[CFU]/L" } });
    expect(verdict("legionella")).toBe("Fail");
  });

  it("without a label is no answer, whatever its result", async () => {
    await open("legionella", LEGIONELLA);
    await form.write("Label on the bottle", "B-17");
    await form.press("Result known");
    await form.type("12");
    await form.write("Label on the bottle", "");
    expect(kept("legionella")).toBeUndefined();
    expect(verdict("legionella")).toBeNull();
  });
});
