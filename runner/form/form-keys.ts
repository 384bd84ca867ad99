import type { KeyboardEvent } from "react";

export interface FormKeys {
  next(): void;
  /** Absent where the open point is no check, or where single keys are turned off. */
  readonly check?: (answer: "ok" | "not-ok") => void;
}

const isWriting = (target: HTMLElement): boolean =>
  target.matches("input:not([type=radio], [type=file]), textarea, select");

/** Enter is meant for the control itself where it does something there. */
const takesEnter = (target: HTMLElement): boolean => {
  if (target.matches("textarea, select, a[href], input[type=radio], input[type=file]")) return true;
  // The chosen answer of a strip has nothing more to do, so Enter goes on from it.
  return target.matches("button:not([aria-pressed=true])");
};

/** Enter = Next, `o` and `n` answer a check. Keys of an open sheet stay in the sheet. */
export function onFormKey(event: KeyboardEvent<HTMLElement>, { next, check }: FormKeys): void {
  const target = event.target as HTMLElement;
  if (event.defaultPrevented || event.nativeEvent.isComposing) return;
  if (event.ctrlKey || event.metaKey || event.altKey || target.closest("dialog")) return;
  if (event.key === "Enter") {
    if (takesEnter(target)) return;
    event.preventDefault();
    next();
  } else if ((event.key === "o" || event.key === "n") && check && !isWriting(target)) {
    event.preventDefault();
    check(event.key === "o" ? "ok" : "not-ok");
  }
}
