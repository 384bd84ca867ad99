import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import type { CalendarRow, PlaceRow } from "@roundbook/schemas";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { act } from "react";
import { createRoot } from "react-dom/client";
import { afterEach, expect, test, vi } from "vitest";
import { ClosedForm } from "./estate-closed-form.tsx";

globalThis.IS_REACT_ACT_ENVIRONMENT = true;
afterEach(() => vi.unstubAllGlobals());

const SITE = "01890000-0000-7000-8000-000000000001";
const refusal = {
  code: "calendar-not-right",
  problems: [
    {
      pointer: "/closures/1/to",
      code: "ends-before",
      params: { from: "2026-12-24", to: "2026-12-20" },
    },
  ],
};

test("what is wrong with a day closed stands at its own line, and nothing is sent twice", async () => {
  let answer: (reply: Response) => void = () => {};
  const puts: string[] = [];
  vi.stubGlobal("fetch", (url: string, init: RequestInit = {}) => {
    if (init.method !== "PUT") return Promise.resolve(Response.json({ rows: [] }));
    puts.push(url);
    return new Promise<Response>((resolve) => {
      answer = resolve;
    });
  });
  const page = document.createElement("div");
  document.body.append(page);
  const root = createRoot(page);
  const closures = [
    { from: "2026-08-01", to: "2026-08-14", reason: "Summer" },
    { from: "2026-12-24", to: "2026-12-20", reason: "Winter" },
  ];
  const site = { id: SITE, name: "Harbour", level: "site" } as PlaceRow;
  const row: CalendarRow = { site: SITE, calendar: { closures }, holidays: [] };
  await act(async () =>
    root.render(
      <MessagesProvider messages={deskEnglish}>
        <QueryClientProvider client={new QueryClient()}>
          <ClosedForm site={site} row={row} onDone={() => {}} />
        </QueryClientProvider>
      </MessagesProvider>,
    ),
  );
  const go = [...page.querySelectorAll("button")].find(
    ({ textContent }) => textContent === "Put in force",
  );
  await act(async () => go?.click());
  expect(go?.disabled).toBe(true);
  await act(async () => go?.click());
  expect(puts).toEqual([`/api/sites/${SITE}/calendar`]);
  await act(async () => answer(Response.json(refusal, { status: 422 })));
  const marked = [...page.querySelectorAll("input")].filter(
    (one) => one.getAttribute("aria-invalid") === "true",
  );
  expect(marked.map(({ value }) => value)).toEqual(["2026-12-20"]);
  await act(async () => root.unmount());
  page.remove();
});
