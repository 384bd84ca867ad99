import type { Checklist } from "@roundbook/schemas";
import { act } from "react";
import { createRoot } from "react-dom/client";
import { ChecklistForm } from "../checklist-form.tsx";
import type { ChecklistFormProps, FinishedFilling } from "../form-props.ts";
import type { Filled } from "../model/filled.ts";

declare global {
  var IS_REACT_ACT_ENVIRONMENT: boolean;
}
globalThis.IS_REACT_ACT_ENVIRONMENT = true;

export interface MountedForm {
  readonly page: HTMLElement;
  readonly changes: Filled[];
  readonly finished: FinishedFilling[];
  text(): string;
  /** The one button whose words (or name) begin so. */
  button(words: string): HTMLButtonElement;
  press(words: string): Promise<void>;
  openPoint(id: string): Promise<void>;
  box(): HTMLInputElement;
  type(text: string): Promise<void>;
  /** Puts a value into the field that is read out so. */
  write(label: string, value: string): Promise<void>;
  /** Writes into the one field for several lines of words. */
  words(value: string): Promise<void>;
  /** Ticks or unticks the box beside these words. */
  tick(words: string): Promise<void>;
  key(key: string, target?: Element): Promise<void>;
  again(props: Partial<ChecklistFormProps>): Promise<void>;
  unmount(): Promise<void>;
}

/** React listens to the setter of the prototype, as a browser's typing goes around it. */
const setValue = (input: HTMLInputElement | HTMLTextAreaElement, value: string) => {
  const kind = input instanceof HTMLInputElement ? HTMLInputElement : HTMLTextAreaElement;
  Object.getOwnPropertyDescriptor(kind.prototype, "value")?.set?.call(input, value);
  input.dispatchEvent(new Event("input", { bubbles: true }));
};

const named = (button: Element): string =>
  button.getAttribute("aria-label") ?? button.textContent ?? "";

/** A form in a page of its own; everything it hands out is kept. */
export async function mountForm(
  document_: Checklist,
  more: Partial<ChecklistFormProps> = {},
): Promise<MountedForm> {
  const page = document.createElement("div");
  document.body.append(page);
  const root = createRoot(page);
  const changes: Filled[] = [];
  const finished: FinishedFilling[] = [];
  let props: ChecklistFormProps = {
    document: document_,
    particulars: { class: "I" },
    keepPhoto: async () => ({ sha256: "a".repeat(64) }),
    photoUrl: async () => undefined,
    onAnswersChange: (filled) => changes.push(filled),
    onFinish: (filled) => {
      finished.push(filled);
    },
    frame: ({ page: leaf, dock }) => (
      <>
        <main>{leaf}</main>
        <footer>{dock}</footer>
      </>
    ),
    ...more,
  };
  const draw = () => act(async () => root.render(<ChecklistForm {...props} />));
  const button = (words: string) => {
    const found = [...page.querySelectorAll("button")].filter((one) =>
      named(one).startsWith(words),
    );
    if (found[0] === undefined) throw new Error(`no button “${words}” in: ${page.textContent}`);
    return found[0];
  };
  const box = () => {
    const found = page.querySelector<HTMLInputElement>(".reading input");
    if (found === null) throw new Error("no reading box is open");
    return found;
  };
  const mounted: MountedForm = {
    page,
    changes,
    finished,
    text: () => page.textContent ?? "",
    button,
    press: (words) => act(async () => button(words).click()),
    openPoint: (id) =>
      act(async () => page.querySelector<HTMLButtonElement>(`[id="point-${id}"] button`)?.click()),
    box,
    async type(text) {
      for (let end = 1; end <= text.length; end += 1) {
        await act(async () => setValue(box(), text.slice(0, end)));
      }
    },
    write: (label, value) =>
      act(async () => {
        const input = [...page.querySelectorAll("input")].find((one) =>
          one.getAttribute("aria-label")?.includes(label),
        );
        if (input === undefined) throw new Error(`no field “${label}” in: ${page.textContent}`);
        setValue(input, value);
      }),
    words: (value) =>
      act(async () => {
        const area = page.querySelector("textarea");
        if (area === null) throw new Error("no field for words is open");
        setValue(area, value);
      }),
    tick: (words) =>
      act(async () => {
        const label = [...page.querySelectorAll("label")].find((one) => one.textContent === words);
        label?.querySelector("input")?.click();
      }),
    key: (key, target = page.querySelector(".point-focus") ?? page) =>
      act(async () => {
        target.dispatchEvent(
          new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }),
        );
      }),
    async again(changed) {
      props = { ...props, ...changed };
      await draw();
    },
    async unmount() {
      await act(async () => root.unmount());
      page.remove();
    },
  };
  await draw();
  return mounted;
}
