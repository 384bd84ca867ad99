import { useEffect, useRef } from "react";

/**
 * Takes over what was written when its field is left. Where a press of the mouse or a finger
 * leaves it, that waits for the release: a sentence that grows under the press would move what
 * was pressed away, and the press would be lost.
 */
export const useLeave = (take: () => void): (() => void) => {
  const latest = useRef(take);
  const pressed = useRef(false);
  useEffect(() => {
    latest.current = take;
  });
  useEffect(() => {
    const press = () => {
      pressed.current = true;
    };
    const release = () => {
      pressed.current = false;
    };
    window.addEventListener("mousedown", press, true);
    window.addEventListener("mouseup", release, true);
    return () => {
      window.removeEventListener("mousedown", press, true);
      window.removeEventListener("mouseup", release, true);
    };
  }, []);
  return () => {
    const now = () => latest.current();
    if (pressed.current) window.addEventListener("mouseup", now, { once: true, capture: true });
    else now();
  };
};
