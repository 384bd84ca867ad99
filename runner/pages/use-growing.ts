import { startTransition, useEffect, useState } from "react";

const FIRST = 12;
const STEP = 24;
const PAUSE_MS = 16;
const AFTER_SCROLL_MS = 250;

/**
 * How many of `total` rows are drawn by now: a screen at once, then all others bit by bit while
 * nobody scrolls, so that no key or frame waits for a long list and in the end a search of the page
 * finds every row.
 */
export function useGrowing(total: number): number {
  const [drawn, setDrawn] = useState(FIRST);
  useEffect(() => {
    if (drawn >= total) return;
    const grow = () => startTransition(() => setDrawn(drawn + STEP));
    let timer = setTimeout(grow, PAUSE_MS);
    const onScroll = () => {
      clearTimeout(timer);
      timer = setTimeout(grow, AFTER_SCROLL_MS);
    };
    window.addEventListener("scroll", onScroll, { passive: true });
    return () => {
      clearTimeout(timer);
      window.removeEventListener("scroll", onScroll);
    };
  }, [drawn, total]);
  return drawn;
}
