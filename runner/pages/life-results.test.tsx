import "fake-indexeddb/auto";
import type { HistoryEntry, Judgement } from "@roundbook/schemas";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, it } from "vitest";
import { checklistOf, LEGIONELLA } from "../form/testing/kinds.ts";
import "../form/testing/mount.tsx";
import { type DeviceDatabase, openDevice } from "../offline/database.ts";
import { listOutbox } from "../offline/outbox.ts";
import { type Device, DeviceProvider } from "./device.tsx";
import { LifeResults } from "./life-results.tsx";

const ASSET = "01890a5d-ac96-774b-bcce-b302099a8057";
const INSPECTION = "01890a5d-ac96-774b-bcce-b302099a8058";
const document_ = checklistOf({ legionella: LEGIONELLA });
const answers = { legionella: { sample: "B-17", takenAt: "2026-10-13T10:06:18.000Z" } };
const row = {
  entry: { id: INSPECTION, kind: "inspection", asset: ASSET, body: { answers } },
  about: { number: "4047", description: "Calorifier" },
} as unknown as HistoryEntry;
const judgement = { pending: ["legionella"], points: {} } as unknown as Judgement;

let database: DeviceDatabase;
let root: Root;
let page: HTMLElement;
let turn = 0;

beforeEach(async () => {
  turn += 1;
  database = await openDevice(`results-${turn}`);
  await database.put("bundles", {
    site: "site",
    fetchedAt: 1,
    bundle: {
      site: { id: "site", name: "Quay", zone: "Europe/London" },
      places: [],
      assets: [{ id: ASSET }],
      intervals: [],
      today: "2026-10-13",
    } as never,
  });
  page = document.createElement("div");
  document.body.append(page);
  root = createRoot(page);
});
afterEach(async () => {
  await act(async () => root.unmount());
  page.remove();
});

async function draw(role: "inspector" | "auditor") {
  const device = {
    database,
    now: () => Date.UTC(2026, 9, 27, 9),
    settings: { clockOffset: 0 },
    person: { id: "person", name: "Dag Ruskeen", role },
    connection: { refresh: async () => {} },
  } as unknown as Device;
  await act(async () =>
    root.render(
      <QueryClientProvider client={new QueryClient()}>
        <DeviceProvider device={device}>
          <LifeResults row={row} document={document_} {...{ judgement, answers }} />
        </DeviceProvider>
      </QueryClientProvider>,
    ),
  );
  await until(() => page.textContent?.includes("on a device that keeps") === false);
}
/** Lets what reads and writes on the device go on until something holds. */
async function until(holds: () => boolean | Promise<boolean>) {
  for (let look = 0; look < 100 && !(await holds()); look += 1) {
    await act(() => new Promise((resolve) => setTimeout(resolve, 20)));
  }
  expect(await holds()).toBe(true);
}
const press = (words: string) =>
  act(async () =>
    [...page.querySelectorAll("button")]
      .filter((one) => one.textContent === words)
      .at(-1)
      ?.click(),
  );
const write = (value: string) =>
  act(async () => {
    const input = page.querySelector<HTMLInputElement>("input[name=figure]");
    if (input === null) throw new Error("no figure is asked for");
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(input, value);
    input.dispatchEvent(new Event("input", { bubbles: true }));
  });

it("a result is an entry of its own, in the unit of its point, and names its inspection", async () => {
  await draw("inspector");
  expect(page.textContent).toContain("LegionellaB-17");
  await press("Write the result");
  await write("<100");
  await press("Write the result");
  await until(() => page.textContent?.includes("Written.") === true);
  const [{ signed } = { signed: undefined }] = await listOutbox(database);
  expect(signed?.entry).toMatchObject({
    kind: "result-received",
    asset: ASSET,
    civilDate: "2026-10-27",
    body: {
      of: INSPECTION,
      point: "legionella",
      result: { value: 100, comparator: "<", unit: "[CFU]/L" },
    },
  });
});

it("what is no figure is no result", async () => {
  await draw("inspector");
  await press("Write the result");
  await write("not detected");
  await press("Write the result");
  await until(() => page.textContent?.includes("A figure, with < or >") === true);
  expect(await listOutbox(database)).toEqual([]);
});

it("an auditor reads what is awaited and writes nothing", async () => {
  await draw("auditor");
  expect(page.textContent).toContain("B-17");
  expect(page.querySelector("button")).toBeNull();
});
