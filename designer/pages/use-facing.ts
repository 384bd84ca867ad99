import { useSyncExternalStore } from "react";

/** From here on the look sets the facing page beside the left one; below, under it. */
const QUERY = "(min-width: 1160px)";

const subscribe = (onChange: () => void) => {
  const list = window.matchMedia(QUERY);
  list.addEventListener("change", onChange);
  return () => list.removeEventListener("change", onChange);
};

/** Whether both pages of the open book fit side by side. */
export const useFacing = (): boolean =>
  useSyncExternalStore(subscribe, () => window.matchMedia(QUERY).matches);
