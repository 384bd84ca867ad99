import type { IntervalDraftRow } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useRef, useState } from "react";
import { begin, change, redo, undo } from "../model/history.ts";
import { type Around, type IntervalDraft, readDraft } from "../model/interval-draft.ts";
import { getJson, Refusal, sendJson } from "../pages/client.ts";

export interface IntervalWork {
  readonly draft: IntervalDraft;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Whether what is written differs from what was read or kept last. */
  readonly changed: boolean;
  /** A draft that somebody else kept meanwhile. */
  readonly theirs: IntervalDraftRow | null;
  apply(next: IntervalDraft, tag?: string): void;
  undo(): void;
  redo(): void;
  /** Keeps what is written as a draft; false when somebody else's stands in the way. */
  keep(): Promise<boolean>;
  /** What is written is in force now: it stands nowhere else any more. */
  putInForce(): Promise<void>;
  takeTheirs(): void;
  keepMine(): Promise<boolean>;
  /** Throws the kept draft away, where there is one. */
  discard(): Promise<void>;
}

/** An interval under work: its history, and its keeping under a revision. */
export const useIntervalDraft = (
  id: string,
  first: IntervalDraft,
  kept: IntervalDraftRow | undefined,
  around: Around,
): IntervalWork => {
  const queries = useQueryClient();
  const [history, setHistory] = useState(() =>
    begin(kept ? readDraft(kept.definition, around) : first),
  );
  const [saved, setSaved] = useState(history.present);
  const [theirs, setTheirs] = useState<IntervalDraftRow | null>(null);
  const revision = useRef(kept?.revision ?? null);
  const draft = history.present;
  const path = `/api/interval-drafts/${id}`;
  const refetch = () => queries.invalidateQueries({ queryKey: ["interval-drafts"] });
  const keep = async (): Promise<boolean> => {
    try {
      const body = { revision: revision.current, definition: draft };
      const reply = await sendJson<IntervalDraftRow | undefined>("PUT", path, body);
      revision.current = reply?.revision ?? (revision.current ?? 0) + 1;
      setSaved(draft);
      setTheirs(null);
      await refetch();
      return true;
    } catch (error) {
      if (!(error instanceof Refusal) || error.status !== 409) throw error;
      const { rows } = await getJson<{ rows: IntervalDraftRow[] }>("/api/interval-drafts");
      setTheirs(rows.find((one) => one.id === id) ?? null);
      return false;
    }
  };
  const discard = async () => {
    if (revision.current === null) return;
    await sendJson("DELETE", path);
    revision.current = null;
    await refetch();
  };
  return {
    draft,
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
    changed: draft !== saved,
    theirs,
    apply: (next, tag) => setHistory((now) => change(now, next, tag ?? null)),
    undo: () => setHistory(undo),
    redo: () => setHistory(redo),
    keep,
    takeTheirs: () => {
      if (!theirs) return;
      const read = readDraft(theirs.definition, around);
      revision.current = theirs.revision;
      setHistory((now) => change(now, read));
      setSaved(read);
      setTheirs(null);
    },
    keepMine: () => {
      revision.current = theirs?.revision ?? null;
      return keep();
    },
    putInForce: async () => {
      await discard();
      setSaved(draft);
      setTheirs(null);
    },
    discard,
  };
};
