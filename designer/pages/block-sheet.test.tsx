import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import type { BlockRow } from "@roundbook/schemas";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { act } from "react";
import { createRoot } from "react-dom/client";
import { afterEach, expect, test, vi } from "vitest";
import { BlockSheet } from "./block-sheet.tsx";

const rowOf = (revision: number, title: string): BlockRow => ({
  name: "plug",
  revision,
  block: { dialect: "urn:roundbook:block:1", name: "plug", title, points: {} },
  changedAt: "2026-10-13T10:00:00Z",
  changedBy: "01890000-0000-7000-8000-000000000002",
  usedBy: [],
});

afterEach(() => vi.unstubAllGlobals());

test("a block that another kept meanwhile is not written over unasked, and what was written stays", async () => {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  const revisions: number[] = [];
  vi.stubGlobal("fetch", async (_: string, init: RequestInit) => {
    const { revision } = JSON.parse(String(init.body)) as { revision: number };
    revisions.push(revision);
    const current = rowOf(4, "Theirs");
    return revision === 4
      ? Response.json(current)
      : Response.json({ code: "block-changed-meanwhile", current }, { status: 409 });
  });
  const page = document.createElement("div");
  document.body.append(page);
  const root = createRoot(page);
  const onClose = vi.fn();
  await act(async () =>
    root.render(
      <MessagesProvider messages={deskEnglish}>
        <QueryClientProvider client={new QueryClient()}>
          <BlockSheet row={rowOf(3, "Mine")} onClose={onClose} />
        </QueryClientProvider>
      </MessagesProvider>,
    ),
  );
  const press = (words: string) =>
    act(async () => {
      const all = [...document.body.querySelectorAll("button")];
      const found = all.find((one) => one.textContent === words);
      if (!found) throw new Error(`no ${words} in ${document.body.textContent}`);
      found.click();
    });
  await press("Keep it");
  expect(document.body.textContent).toContain("kept elsewhere meanwhile, as revision 4");
  expect(document.body.querySelector("textarea")?.value).toContain("Mine");
  expect(onClose).not.toHaveBeenCalled();
  await press("Keep this one as the newest");
  await press("Keep it");
  expect(revisions).toEqual([3, 4]);
  expect(onClose).toHaveBeenCalledOnce();
  await act(async () => root.unmount());
  page.remove();
});
