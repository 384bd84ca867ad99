import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import type { AssetTypeRow, ChecklistRow, IntervalRow } from "@roundbook/schemas";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { act } from "react";
import { createRoot } from "react-dom/client";
import { vi } from "vitest";
import { Route, Router } from "wouter";
import { memoryLocation } from "wouter/memory-location";
import { IntervalPage } from "../pages/interval-page.tsx";
import { IntervalsPage } from "../pages/intervals-page.tsx";
import { SessionProvider } from "../pages/session.tsx";

globalThis.IS_REACT_ACT_ENVIRONMENT = true;

export interface Asked {
  readonly method: string;
  readonly path: string;
  readonly body: Readonly<Record<string, unknown>> | undefined;
}

export interface Desk {
  readonly intervals?: readonly IntervalRow[];
  readonly drafts?: readonly object[];
  readonly types: readonly AssetTypeRow[];
  readonly checklists: readonly ChecklistRow[];
  /** Answers what is not a list; undefined for 204. */
  readonly answer?: (asked: Asked) => object | Response | undefined;
}

const ID = "01890000-0000-7000-8000-0000000000aa";

/** The pages of the intervals over a server that answers as told. */
export const mountIntervals = async (path: string, desk: Desk) => {
  const asked: Asked[] = [];
  const lists: Readonly<Record<string, readonly object[]>> = {
    "/api/intervals": desk.intervals ?? [],
    "/api/interval-drafts": desk.drafts ?? [],
    "/api/asset-types": desk.types,
    "/api/checklists": desk.checklists,
  };
  vi.stubGlobal("fetch", async (url: string, init: RequestInit = {}) => {
    const one: Asked = {
      method: init.method ?? "GET",
      path: url,
      body: init.body ? JSON.parse(String(init.body)) : undefined,
    };
    if (one.method === "GET" && !desk.answer?.(one))
      return Response.json({ rows: lists[url] ?? [] });
    asked.push(one);
    const reply = desk.answer?.(one);
    if (reply instanceof Response) return reply;
    return reply ? Response.json(reply) : new Response(null, { status: 204 });
  });
  // Wide enough for both pages of the open book.
  vi.spyOn(window, "matchMedia").mockImplementation(
    () => ({ matches: true, addEventListener: () => {}, removeEventListener: () => {} }) as never,
  );
  const page = document.createElement("div");
  document.body.append(page);
  const root = createRoot(page);
  const memory = memoryLocation({ path, record: true });
  const person = { id: ID, name: "Morwen Tolvane", role: "manager" } as const;
  const estate = { id: ID, name: "Vennasay Harbour Trust" };
  await act(async () =>
    root.render(
      <MessagesProvider messages={deskEnglish}>
        <QueryClientProvider
          client={new QueryClient({ defaultOptions: { queries: { retry: false } } })}
        >
          <SessionProvider value={{ person, estate } as never}>
            <Router hook={memory.hook}>
              <Route path="/intervals" component={IntervalsPage} />
              <Route path="/intervals/:id" component={IntervalPage} />
            </Router>
          </SessionProvider>
        </QueryClientProvider>
      </MessagesProvider>,
    ),
  );
  const settle = () => act(() => vi.advanceTimersByTimeAsync(1000));
  await settle();
  const named = (one: Element) => one.getAttribute("aria-label") ?? one.textContent ?? "";
  const find = (words: string | RegExp): HTMLElement => {
    const all = [...page.querySelectorAll<HTMLElement>("button, a, label, [role=button]")];
    const fits = (one: Element) =>
      typeof words === "string" ? named(one).trim() === words : words.test(named(one));
    const found = all.find(fits);
    if (!found) throw new Error(`no ${words} in: ${page.textContent}`);
    return found;
  };
  return {
    asked,
    at: () => memory.history.at(-1),
    text: () => (page.textContent ?? "").replaceAll("\u00a0", " "),
    settle,
    find,
    press: async (words: string | RegExp) => {
      await act(async () => find(words).click());
      await settle();
    },
    write: async (text: string, selector = ".blank-edit :is(input, textarea)") => {
      const target = page.querySelector<HTMLInputElement>(selector);
      if (!target) throw new Error(`no field ${selector}`);
      await act(async () => {
        // React listens to the setter of the prototype, as a browser's typing goes around it.
        Object.getOwnPropertyDescriptor(Object.getPrototypeOf(target), "value")?.set?.call(
          target,
          text,
        );
        target.dispatchEvent(new Event("input", { bubbles: true }));
      });
      await act(async () =>
        target.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true })),
      );
      await settle();
    },
    key: (key: string, more: KeyboardEventInit) =>
      act(async () => {
        window.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, ...more }));
      }),
    unmount: async () => {
      await act(async () => root.unmount());
      page.remove();
    },
  };
};
