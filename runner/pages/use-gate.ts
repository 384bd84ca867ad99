import type { SessionReply } from "@roundbook/schemas";
import { useCallback, useEffect, useState } from "react";
import type { DeviceDatabase } from "../offline/database.ts";
import { loadSettings, OFFLINE_DAYS } from "../offline/settings.ts";
import { Refusal, Unreachable } from "../sync/client.ts";
import { refreshSession } from "../sync/refresh.ts";
import type { SignedIn } from "./device.tsx";

/** What stands before the book: it has not begun, nobody is signed in, or somebody is. */
export type Gate =
  | { readonly state: "opening" }
  | { readonly state: "begin"; again(): void }
  | { readonly state: "sign-in"; readonly estate: string | null; again(): void }
  | { readonly state: "in"; readonly signedIn: SignedIn };

const DAY_MS = 86_400_000;

const asSignedIn = (reply: SessionReply | null): SignedIn | null =>
  reply?.person && reply.estate ? { person: reply.person, estate: reply.estate } : null;

/** The last person of this device, for as long as it serves them without a network. */
const keptPerson = async (database: DeviceDatabase, now: number): Promise<SignedIn | null> => {
  const { session } = await loadSettings(database);
  if (!session || now - session.seenAt > OFFLINE_DAYS * DAY_MS) return null;
  return asSignedIn(session.reply);
};

export const useGate = (database: DeviceDatabase, now: () => number): Gate => {
  const [gate, setGate] = useState<Gate>({ state: "opening" });
  const ask = useCallback(async () => {
    const wantsSignIn = location.pathname === "/sign-in";
    try {
      const reply = await refreshSession(database, now);
      if (reply.empty) return setGate({ state: "begin", again });
      const signedIn = asSignedIn(reply);
      if (signedIn) return setGate({ state: "in", signedIn });
      setGate({ state: "sign-in", estate: reply.estate?.name ?? null, again });
    } catch (error) {
      if (!(error instanceof Unreachable) && !(error instanceof Refusal)) throw error;
      const signedIn = wantsSignIn ? null : await keptPerson(database, now());
      setGate(signedIn ? { state: "in", signedIn } : { state: "sign-in", estate: null, again });
    }
    function again() {
      void ask();
    }
  }, [database, now]);
  useEffect(() => void ask(), [ask]);
  return gate;
};
