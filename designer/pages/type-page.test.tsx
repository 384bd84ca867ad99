import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import type { AssetTypeRow, SaveAssetType } from "@roundbook/schemas";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { Route, Router } from "wouter";
import { memoryLocation } from "wouter/memory-location";
import { SessionProvider } from "./session.tsx";
import { TypePage } from "./type-page.tsx";

const rowOf = (version: number, title: string): AssetTypeRow => ({
  assetType: "ladder",
  version,
  title,
  particulars: { rungs: { title: "Rungs", order: 1, type: "integer", description: "Count them" } },
  checklists: [],
});

const settle = () => act(() => vi.advanceTimersByTimeAsync(1000));

let page: HTMLElement;
let root: Root;
/** What the server has, and what it was asked to put in its place. */
let stored: AssetTypeRow;
let sent: SaveAssetType[];
beforeEach(async () => {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  vi.useFakeTimers();
  stored = rowOf(3, "Ladder");
  sent = [];
  vi.stubGlobal("fetch", async (path: string, init: RequestInit = {}) => {
    if (init.method === "PUT") {
      const given = JSON.parse(String(init.body)) as SaveAssetType;
      sent.push(given);
      if (given.version !== stored.version)
        return Response.json(
          { code: "asset-type-changed-meanwhile", current: stored },
          { status: 409 },
        );
      stored = { ...given, version: given.version + 1 };
      return Response.json({ version: stored.version });
    }
    return Response.json({ rows: path.startsWith("/api/asset-types") ? [stored] : [] });
  });
  vi.spyOn(window, "matchMedia").mockImplementation(
    () => ({ matches: true, addEventListener: () => {}, removeEventListener: () => {} }) as never,
  );
  page = document.createElement("div");
  document.body.append(page);
  root = createRoot(page);
  const id = "01890000-0000-7000-8000-0000000000aa";
  const person = { id, name: "Morwen Tolvane", role: "manager" };
  const estate = { id, name: "Vennasay Harbour Trust" };
  const { hook } = memoryLocation({ path: "/asset-types/ladder" });
  await act(async () =>
    root.render(
      <MessagesProvider messages={deskEnglish}>
        <QueryClientProvider client={new QueryClient()}>
          <SessionProvider value={{ person, estate } as never}>
            <Router hook={hook}>
              <Route path="/asset-types/:name" component={TypePage} />
            </Router>
          </SessionProvider>
        </QueryClientProvider>
      </MessagesProvider>,
    ),
  );
  await settle();
});
afterEach(async () => {
  await act(async () => root.unmount());
  page.remove();
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

const title = () => {
  const field = page.querySelector<HTMLInputElement>('input[name="title"]');
  if (!field) throw new Error(`no title in: ${page.textContent}`);
  return field;
};
const write = (text: string) =>
  act(async () => {
    const field = title();
    // React listens to the setter of the prototype, as a browser's typing goes around it.
    Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(field, text);
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
const press = async (words: string) => {
  const found = [...page.querySelectorAll("button")].find((one) => one.textContent === words);
  if (!found) throw new Error(`no ${words} in: ${page.textContent}`);
  await act(async () => found.click());
  await settle();
};

test("a type goes on from the version that was put in force last", async () => {
  await write("Ladders");
  await press("Put in force");
  await write("Step ladders");
  await press("Put in force");
  expect(sent.map((one) => [one.version, one.title])).toEqual([
    [3, "Ladders"],
    [4, "Step ladders"],
  ]);
  expect(page.textContent).toContain("In force as version 5.");
});

test("a type that another changed meanwhile is not written over unasked, and what was written stays", async () => {
  await write("Mine");
  stored = rowOf(4, "Theirs");
  await press("Put in force");
  expect(page.textContent).toContain("Somebody put version 4 in force meanwhile.");
  expect(stored.title).toBe("Theirs");
  expect(title().value).toBe("Mine");
  await press("Keep this one as the newest");
  expect(title().value).toBe("Mine");
  await press("Put in force");
  expect(sent.map((one) => one.version)).toEqual([3, 4]);
  expect(stored).toMatchObject({
    version: 5,
    title: "Mine",
    particulars: { rungs: { description: "Count them" } },
  });
});

test("theirs can be taken in place of one's own, and is gone on from", async () => {
  await write("Mine");
  stored = rowOf(4, "Theirs");
  await press("Put in force");
  await press("Take theirs");
  expect(title().value).toBe("Theirs");
  expect(page.textContent).not.toContain("meanwhile");
  await write("Theirs, and mine");
  await press("Put in force");
  expect(stored).toMatchObject({ version: 5, title: "Theirs, and mine" });
});
