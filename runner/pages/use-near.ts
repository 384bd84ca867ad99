import { type RefObject, startTransition, useEffect, useState } from "react";

/** True once the element has come within a screen of what is seen; it stays true. */
export function useNear(element: RefObject<Element | null>): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    if (near || !element.current || typeof IntersectionObserver === "undefined") return;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting))
          startTransition(() => setNear(true));
      },
      { rootMargin: "100% 0%" },
    );
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [near, element]);
  return near;
}
