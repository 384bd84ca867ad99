import type { SessionReply } from "@roundbook/schemas";
import { createContext, useContext } from "react";

export interface DesignerSession {
  readonly person: NonNullable<SessionReply["person"]>;
  readonly estate: NonNullable<SessionReply["estate"]>;
}

const SessionContext = createContext<DesignerSession | null>(null);
export const SessionProvider = SessionContext.Provider;

/** Who edits, and which estate. */
export const useSession = (): DesignerSession => {
  const session = useContext(SessionContext);
  if (!session) throw new Error("useSession outside SessionProvider");
  return session;
};
