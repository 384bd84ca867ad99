import type { ReactNode } from "react";
import { useFootHeight } from "./foot-height.ts";

/** The docked foot of a page; on a low screen it stays in the flow, so that it cannot fill it. */
export function Dock({ children }: { readonly children: ReactNode }) {
  const ref = useFootHeight("--dock-height", "(min-height: 401px)");
  return (
    <footer className="dock" ref={ref}>
      {children}
    </footer>
  );
}
