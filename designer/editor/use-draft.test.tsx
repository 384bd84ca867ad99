import type { DraftRow } from "@roundbook/schemas";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { act } from "react";
import { createRoot, type Root } from "react-dom/client";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { emptyDocument } from "../model/draft-document.ts";
import { type DraftDesk, useDraft } from "./use-draft.ts";

const row: DraftRow = {
  checklist: "01890000-0000-7000-8000-000000000001",
  revision: 3,
  document: { ...emptyDocument("Ladder") },
  changedAt: "2026-10-13T10:00:00Z",
  changedBy: "01890000-0000-7000-8000-000000000002",
  problems: [],
  lastIssue: 0,
};
const theirs: DraftRow = { ...row, revision: 9, document: { ...emptyDocument("Ladder, theirs") } };

interface Asked {
  readonly method: string;
  readonly path: string;
  readonly body: { revision?: number; document: { title: string } };
}
let asked: Asked[];
let answer: (asked: Asked) => Response | Promise<Response>;
let root: Root;
let desk: DraftDesk;

const kept = ({ body }: Asked) =>
  Response.json({ ...row, revision: (body.revision ?? 0) + 1, document: body.document });

beforeEach(async () => {
  globalThis.IS_REACT_ACT_ENVIRONMENT = true;
  vi.useFakeTimers();
  asked = [];
  answer = kept;
  vi.stubGlobal("fetch", async (path: string, init: RequestInit) => {
    const one = { method: init.method ?? "GET", path, body: JSON.parse(String(init.body)) };
    asked.push(one);
    return answer(one);
  });
  const Draft = () => {
    desk = useDraft(row);
    return null;
  };
  root = createRoot(document.createElement("div"));
  await act(async () =>
    root.render(
      <QueryClientProvider client={new QueryClient()}>
        <Draft />
      </QueryClientProvider>,
    ),
  );
});

afterEach(async () => {
  await act(async () => root.unmount());
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const titled = (title: string) => act(async () => desk.apply({ ...desk.document, title }));
const wait = (milliseconds: number) =>
  act(async () => {
    await vi.advanceTimersByTimeAsync(milliseconds);
  });

test("changes in a row are kept once, under the revision that was read", async () => {
  await titled("Ladder, long");
  await titled("Ladder, extension");
  await wait(2000);
  expect(asked).toHaveLength(1);
  expect(asked[0]).toMatchObject({
    method: "PUT",
    body: { revision: 3, document: { title: "Ladder, extension" } },
  });
  await titled("Ladder");
  await wait(2000);
  expect(asked[1]?.body.revision).toBe(4);
});

test("a draft changed by somebody else is not written over, and theirs can be taken", async () => {
  answer = () =>
    Response.json({ code: "draft-changed-meanwhile", current: theirs }, { status: 409 });
  await titled("Ladder, mine");
  await wait(2000);
  expect(desk.keeping.state).toBe("conflict");
  expect(desk.document.title).toBe("Ladder, mine");
  answer = kept;
  await act(async () => desk.takeTheirs());
  expect(desk.document.title).toBe("Ladder, theirs");
  await act(async () => desk.undo());
  expect(desk.document.title).toBe("Ladder, mine");
  await wait(2000);
  expect(asked.at(-1)?.body).toMatchObject({ revision: 9, document: { title: "Ladder, mine" } });
});

test("one's own text may be kept as the newest, and undoing brings theirs back", async () => {
  answer = () =>
    Response.json({ code: "draft-changed-meanwhile", current: theirs }, { status: 409 });
  await titled("Ladder, mine");
  await wait(2000);
  answer = kept;
  await act(async () => desk.keepMine());
  await wait(2000);
  expect(asked.at(-1)?.body).toMatchObject({ revision: 9, document: { title: "Ladder, mine" } });
  await act(async () => desk.undo());
  expect(desk.document.title).toBe("Ladder, theirs");
});

test("changes that follow one another without a pause are kept meanwhile", async () => {
  for (let at = 0; at < 10; at += 1) {
    await titled(`Ladder, ${at}`);
    await wait(300);
  }
  expect(asked.length).toBeGreaterThanOrEqual(4);
});

test("it is called kept only while the server has this very text", async () => {
  answer = (one) =>
    Response.json({
      ...row,
      problems: [{ pointer: "", code: "no-points", params: {} }],
      document: one.body.document,
    });
  await titled("Ladder, mine");
  expect(desk.keeping.state).toBe("keeping");
  await wait(2000);
  expect(desk.keeping.state).toBe("kept");
  expect(desk.served).toHaveLength(1);
  await titled("Ladder, again");
  expect(desk.keeping.state).toBe("keeping");
  expect(desk.served).toEqual([]);
});

test("one's own text may be kept as a draft of its own, beside theirs", async () => {
  answer = () =>
    Response.json({ code: "draft-changed-meanwhile", current: theirs }, { status: 409 });
  await titled("Ladder, mine");
  await wait(2000);
  answer = ({ body }) =>
    Response.json({ ...row, checklist: "copy", document: body.document }, { status: 201 });
  const copy = await act(async () => desk.keepCopy("Ladder, mine (copy)"));
  expect(copy).toBe("copy");
  expect(asked.at(-1)).toMatchObject({
    method: "POST",
    path: "/api/drafts",
    body: { document: { title: "Ladder, mine (copy)" } },
  });
  const count = asked.length;
  expect(await act(async () => desk.flush())).toBe(true);
  expect(asked).toHaveLength(count);
});

test("a server out of reach is asked again until it keeps the draft", async () => {
  answer = () => Promise.reject(new TypeError("no network"));
  await titled("Ladder, mine");
  await wait(1000);
  expect(desk.keeping.state).toBe("away");
  expect(await act(async () => desk.flush())).toBe(false);
  answer = kept;
  await wait(6000);
  expect(desk.keeping.state).toBe("kept");
  expect(asked.at(-1)?.body.document.title).toBe("Ladder, mine");
});

test("what is applied keeps its wording, and so does what is undone", async () => {
  const groups = ["Legs", "Back"].map((title) => ({ id: title.toLowerCase(), title, points: [] }));
  const cy = { "/groups/0/title": "Coesau", "/groups/1/title": "Cefn" };
  await act(async () => desk.apply({ ...desk.document, groups, wording: { cy } }));
  await act(async () => desk.apply({ ...desk.document, groups: groups.toReversed() }));
  expect(desk.document.wording).toEqual({
    cy: { "/groups/0/title": "Cefn", "/groups/1/title": "Coesau" },
  });
  await act(async () => desk.undo());
  expect(desk.document.wording).toEqual({ cy });
});
