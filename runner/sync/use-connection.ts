import type { Role } from "@roundbook/schemas";
import { useCallback, useEffect, useRef, useState } from "react";
import type { DeviceDatabase } from "../offline/database.ts";
import { Refusal, Unreachable } from "./client.ts";
import type { Connection } from "./connection.ts";
import { drain } from "./drain.ts";
import { enrol, refreshSession, refreshSite } from "./refresh.ts";
import { refreshPast } from "./refresh-past.ts";

type State = Omit<Connection, "refresh">;

const AGAIN_MS = 30_000;

const count = async (database: DeviceDatabase): Promise<Pick<State, "waiting" | "refused">> => {
  const outbox = await database.getAll("outbox");
  const refused = outbox.filter((row) => row.state === "refused").length;
  return { waiting: outbox.length - refused, refused };
};

interface Served {
  readonly database: DeviceDatabase;
  readonly person: string;
  readonly label: string;
  /** The site to keep, once one is chosen. */
  readonly site: string | null;
  now(): number;
  /** What the device keeps has changed: whatever was read from it has to be read again. */
  onRefreshed(): void;
}

/** Whoever may write delivers what others wrote here; for an auditor it goes on waiting. */
const drainFor = (role: Role | undefined, database: DeviceDatabase, now: () => number) => {
  if (role === undefined) return "signed-out" as const;
  return role === "auditor" ? ("done" as const) : drain(database, now);
};

/** Sends what waits and refreshes what is kept: at the start, on a signal, on return, and in between. */
export const useConnection = (served: Served): Connection => {
  const { database, person, label, site, now, onRefreshed } = served;
  const [state, setState] = useState<State>({
    online: navigator.onLine,
    offlineSince: null,
    waiting: 0,
    refused: 0,
    sending: false,
    signedOut: false,
  });
  const running = useRef<Promise<void> | null>(null);
  const queued = useRef<Promise<void> | null>(null);

  const once = useCallback(async () => {
    const before = await count(database);
    setState((last) => ({ ...last, ...before, sending: before.waiting > 0 }));
    let answered: Partial<State>;
    try {
      const reply = await refreshSession(database, now);
      const signedOut = reply.person?.id !== person;
      if (!signedOut && reply.person?.role !== "auditor") await enrol(database, person, label);
      const drained = await drainFor(reply.person?.role, database, now);
      const sites = new Set((await database.getAllKeys("bundles")).concat(site ?? []));
      if (!signedOut) for (const one of sites) await refreshSite(database, one, now);
      answered = {
        online: drained !== "unreachable",
        offlineSince: drained === "unreachable" ? now() : null,
        signedOut: signedOut || drained === "signed-out",
      };
    } catch (error) {
      if (!(error instanceof Unreachable) && !(error instanceof Refusal)) throw error;
      const away = error instanceof Unreachable;
      answered = {
        online: !away,
        signedOut: error instanceof Refusal && error.status === 401,
        ...(away ? {} : { offlineSince: null }),
      };
    }
    const after = await count(database);
    setState((last) => ({
      ...last,
      ...answered,
      ...after,
      sending: false,
      offlineSince:
        answered.online === false ? (last.offlineSince ?? now()) : (answered.offlineSince ?? null),
    }));
    onRefreshed();
    // Nothing waits for it: what is written meanwhile is sent first.
    if (answered.online !== false && !answered.signedOut) {
      void refreshPast(database, now);
      void import("./renew-numbers.ts").then(({ renewNumbers }) => renewNumbers(database, person));
    }
  }, [database, person, label, site, now, onRefreshed]);

  const refresh = useCallback((): Promise<void> => {
    // One at a time; all calls that come meanwhile share one more turn, with what came since.
    if (queued.current) return queued.current;
    const turn = (running.current ?? Promise.resolve()).then(() => {
      queued.current = null;
      return once();
    });
    queued.current = turn;
    running.current = turn.catch(() => undefined);
    return turn;
  }, [once]);

  useEffect(() => {
    const now = () => void refresh();
    now();
    const seen = () => document.visibilityState === "visible" && now();
    const timer = setInterval(seen, AGAIN_MS);
    window.addEventListener("online", now);
    window.addEventListener("offline", now);
    document.addEventListener("visibilitychange", seen);
    return () => {
      clearInterval(timer);
      window.removeEventListener("online", now);
      window.removeEventListener("offline", now);
      document.removeEventListener("visibilitychange", seen);
    };
  }, [refresh]);

  return { ...state, refresh };
};
