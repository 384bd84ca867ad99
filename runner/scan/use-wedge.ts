import { useEffect, useRef } from "react";
import { createWedge } from "./wedge.ts";

const TAKES_TEXT = "input, textarea, select, [contenteditable], [role=dialog] *";

/** Calls `onCode` with what a scanner sends while no field has the focus. `now` in ms. */
export const useWedge = (now: () => number, onCode: (code: string) => void): void => {
  const newest = useRef(onCode);
  useEffect(() => {
    newest.current = onCode;
  });
  useEffect(() => {
    const wedge = createWedge(now);
    const hear = (event: KeyboardEvent) => {
      const code = wedge({
        key: event.key,
        shortcut: event.ctrlKey || event.altKey || event.metaKey,
        inField: event.target instanceof Element && event.target.matches(TAKES_TEXT),
      });
      if (code === undefined) return;
      // The scanner's Enter would press the button or link that has the focus.
      event.preventDefault();
      newest.current(code);
    };
    document.addEventListener("keydown", hear, true);
    return () => document.removeEventListener("keydown", hear, true);
  }, [now]);
};
