import { deskEnglish, MessagesProvider } from "@roundbook/runner/form";
import type { Block, FormulaEngine } from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { act, useState } from "react";
import { createRoot } from "react-dom/client";
import { AroundSentences } from "../editor/around-sentences.tsx";
import { DeskProvider } from "../editor/desk.tsx";
import { PointList } from "../editor/point-list.tsx";
import type { DraftDocument } from "../model/draft-document.ts";
import { wholeOf } from "../model/whole.ts";

declare global {
  var IS_REACT_ACT_ENVIRONMENT: boolean;
}
globalThis.IS_REACT_ACT_ENVIRONMENT = true;

const engine: FormulaEngine = createFormulaEngine();

export interface MountedEditor {
  /** The document as the editor has made it. */
  document(): DraftDocument;
  text(): string;
  press(words: string | RegExp): Promise<void>;
  /** Writes into the open field, in place of what stands there. */
  write(text: string): Promise<void>;
  key(key: string, more?: KeyboardEventInit): Promise<void>;
  unmount(): Promise<void>;
}

/** The page of sentences over a document of its own; the first point may stand open. */
export const mountEditor = async (
  first: DraftDocument,
  opened: string | null = null,
  blocks: readonly Block[] = [],
): Promise<MountedEditor> => {
  const page = document.createElement("div");
  document.body.append(page);
  const root = createRoot(page);
  let latest = first;
  const Editor = () => {
    const [document_, setDocument] = useState(first);
    const [open, setOpen] = useState<string | null>(null);
    const [point, setPoint] = useState(opened);
    latest = document_;
    return (
      <DeskProvider
        value={{
          document: document_,
          whole: wholeOf(document_, blocks).document,
          blocks,
          apply: setDocument,
          open,
          setOpen,
          engine,
          needEngine: () => {},
          retired: new Set(),
        }}
      >
        <AroundSentences />
        <PointList opened={point} onOpen={setPoint} problems={[]} />
      </DeskProvider>
    );
  };
  await act(async () =>
    root.render(
      <MessagesProvider messages={deskEnglish}>
        <QueryClientProvider client={new QueryClient()}>
          <Editor />
        </QueryClientProvider>
      </MessagesProvider>,
    ),
  );
  const named = (one: Element) => one.getAttribute("aria-label") ?? one.textContent ?? "";
  const button = (words: string | RegExp): HTMLElement => {
    const all = [...page.querySelectorAll<HTMLElement>("button, [role=button]")];
    const fits = (one: Element) =>
      typeof words === "string" ? named(one) === words : words.test(named(one));
    const found = all.find(fits);
    if (!found) throw new Error(`no button ${words} in: ${page.textContent}`);
    return found;
  };
  const field = () => {
    const found = page.querySelector<HTMLInputElement>(".blank-edit :is(input, textarea)");
    if (!found) throw new Error("no blank is open");
    return found;
  };
  return {
    document: () => latest,
    text: () => page.textContent ?? "",
    press: (words) => act(async () => button(words).click()),
    write: (text) =>
      act(async () => {
        const target = field();
        // React listens to the setter of the prototype, as a browser's typing goes around it.
        Object.getOwnPropertyDescriptor(Object.getPrototypeOf(target), "value")?.set?.call(
          target,
          text,
        );
        target.dispatchEvent(new Event("input", { bubbles: true }));
      }),
    key: (key, more) =>
      act(async () => {
        const target =
          page.querySelector(".blank-edit input") ?? page.querySelector(".point-focus") ?? page;
        target.dispatchEvent(
          new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...more }),
        );
      }),
    unmount: async () => {
      await act(async () => root.unmount());
      page.remove();
    },
  };
};
