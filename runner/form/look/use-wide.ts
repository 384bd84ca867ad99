import { useSyncExternalStore } from "react";

const query = "(min-width: 900px)";

function subscribe(onChange: () => void) {
  const list = window.matchMedia(query);
  list.addEventListener("change", onChange);
  return () => list.removeEventListener("change", onChange);
}

/** True from the width at which the contents stand at the left of the page. */
export function useWide() {
  return useSyncExternalStore(subscribe, () => window.matchMedia(query).matches);
}
