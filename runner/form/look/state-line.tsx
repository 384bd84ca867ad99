import type { ReactNode } from "react";
import { SendingMark, type SendingState } from "./sending-mark.tsx";

/** The only banner: what is so now (no signal, what is awaited), announced when it changes. */
export function StateLine({
  mark,
  children,
}: {
  readonly mark?: SendingState;
  readonly children: ReactNode;
}) {
  return (
    <div className="state-line" role="status">
      {mark !== undefined && <SendingMark state={mark} />}
      <span>{children}</span>
    </div>
  );
}
