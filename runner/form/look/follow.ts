import type { MouseEvent } from "react";

/** Given an anchor's address on a plain click; a click meant for a new tab never reaches it. */
export type Follow = (href: string) => void;

/** Lets a router take a plain click and leaves modified and middle clicks to the browser. */
export function followWith(href: string, onFollow: Follow | undefined) {
  if (!onFollow) return undefined;
  return (event: MouseEvent<HTMLAnchorElement>) => {
    const plain = event.button === 0 && !(event.metaKey || event.ctrlKey || event.shiftKey);
    if (!plain || event.altKey || event.defaultPrevented) return;
    event.preventDefault();
    onFollow(href);
  };
}
