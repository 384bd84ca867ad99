import { useEffect, useRef } from "react";

/**
 * Publishes the height of a docked part as a custom property on the root, where the scroll
 * padding and the parts stacked above it read it: a focused field is never hidden beneath.
 */
export function useFootHeight(property: "--dock-height" | "--contents-height", docked: string) {
  const ref = useRef<HTMLElement>(null);
  useEffect(() => {
    const part = ref.current;
    if (!part || typeof ResizeObserver === "undefined") return;
    const root = document.documentElement.style;
    const query = window.matchMedia(docked);
    const measure = () =>
      root.setProperty(
        property,
        query.matches ? `${part.getBoundingClientRect().height}px` : "0px",
      );
    const observer = new ResizeObserver(measure);
    observer.observe(part);
    query.addEventListener("change", measure);
    measure();
    return () => {
      observer.disconnect();
      query.removeEventListener("change", measure);
      root.removeProperty(property);
    };
  }, [property, docked]);
  return ref;
}
