import type { ReactNode } from "react";

/** What stands under a closed point's row, in the words column. */
export const PointDetails = ({ children }: { readonly children: ReactNode }) => (
  <div className="point-details">{children}</div>
);
