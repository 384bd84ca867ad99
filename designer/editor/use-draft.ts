import type { DraftRow, Problem } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useCallback, useEffect, useRef, useState } from "react";
import type { DraftDocument } from "../model/draft-document.ts";
import { followWording } from "../model/follow-wording.ts";
import { begin, change, type History, redo, undo } from "../model/history.ts";
import { Refusal, sendJson, Unreachable } from "../pages/client.ts";

const PAUSE_MS = 400;
/** How often a server that could not be reached is tried again. */
const AGAIN_MS = 5000;

export type Keeping =
  | { readonly state: "kept"; readonly at: string }
  | { readonly state: "keeping" }
  | { readonly state: "away" }
  | { readonly state: "refused"; readonly code: string; readonly problems: readonly Problem[] }
  | { readonly state: "conflict"; readonly theirs: DraftRow };

export interface DraftDesk {
  readonly document: DraftDocument;
  readonly history: History<DraftDocument>;
  readonly keeping: Keeping;
  /** Problems the server found in this very text; none while it has an older one. */
  readonly served: readonly Problem[];
  /** Changes with one tag in a row are one step back. What is worded stays worded as it was. */
  apply(next: DraftDocument, tag?: string): void;
  undo(): void;
  redo(): void;
  takeTheirs(): void;
  /** Keeps this text as the newest; undoing brings theirs back. */
  keepMine(): void;
  /** Keeps this text as a draft of a checklist of its own, beside theirs; to that checklist. */
  keepCopy(title: string): Promise<string>;
  /** Keeps what is written at once; whether the server has all of it now. */
  flush(): Promise<boolean>;
}

/** A draft under work: its history, and its keeping on the server under a revision. */
export const useDraft = (row: DraftRow): DraftDesk => {
  const queries = useQueryClient();
  const [history, setHistory] = useState(() => begin(row.document as unknown as DraftDocument));
  const [keeping, setKeeping] = useState<Keeping>({ state: "kept", at: row.changedAt });
  const [served, setServed] = useState({ of: history.present, problems: row.problems });
  const revision = useRef(row.revision);
  const latest = useRef(history.present);
  const saved = useRef(history.present);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const saving = useRef<Promise<void>>(Promise.resolve());

  const save = useCallback(async () => {
    const document = latest.current;
    if (document === saved.current) return;
    setKeeping({ state: "keeping" });
    try {
      const kept = await sendJson<DraftRow>("PUT", `/api/drafts/${row.checklist}`, {
        revision: revision.current,
        document,
      });
      revision.current = kept.revision;
      saved.current = document;
      setServed({ of: document, problems: kept.problems });
      setKeeping({ state: "kept", at: kept.changedAt });
      queries.setQueryData(["draft", row.checklist], kept);
    } catch (error) {
      if (error instanceof Unreachable) setKeeping({ state: "away" });
      else if (error instanceof Refusal && error.status === 409)
        setKeeping({ state: "conflict", theirs: error.reply.current as DraftRow });
      else if (error instanceof Refusal)
        setKeeping({ state: "refused", code: error.code, problems: error.problems });
      else throw error;
    }
  }, [row.checklist, queries]);

  // The first change of several starts the wait: changes without a pause are kept too.
  const saveSoon = useCallback(() => {
    timer.current ??= setTimeout(() => {
      timer.current = undefined;
      saving.current = saving.current.then(save);
    }, PAUSE_MS);
  }, [save]);

  const step = useCallback(
    (next: History<DraftDocument>) => {
      latest.current = next.present;
      setHistory(next);
      saveSoon();
    },
    [saveSoon],
  );
  const flush = useCallback(async () => {
    clearTimeout(timer.current);
    timer.current = undefined;
    saving.current = saving.current.then(save);
    await saving.current;
    return saved.current === latest.current;
  }, [save]);
  const away = keeping.state === "away";
  useEffect(() => {
    if (!away) return;
    const again = setInterval(() => void flush(), AGAIN_MS);
    return () => clearInterval(again);
  }, [away, flush]);
  useEffect(() => {
    const leaving = () => void flush();
    window.addEventListener("pagehide", leaving);
    document.addEventListener("visibilitychange", leaving);
    return () => {
      window.removeEventListener("pagehide", leaving);
      document.removeEventListener("visibilitychange", leaving);
      leaving();
    };
  }, [flush]);

  const isKept = served.of === history.present;
  return {
    document: history.present,
    history,
    keeping: keeping.state === "kept" && !isKept ? { state: "keeping" } : keeping,
    served: isKept ? served.problems : [],
    apply: (next, tag) => step(change(history, followWording(history.present, next), tag ?? null)),
    undo: () => step(undo(history)),
    redo: () => step(redo(history)),
    takeTheirs: () => {
      if (keeping.state !== "conflict") return;
      const { revision: theirRevision, document, changedAt, problems } = keeping.theirs;
      const theirs = document as unknown as DraftDocument;
      revision.current = theirRevision;
      saved.current = theirs;
      latest.current = theirs;
      setHistory(change(history, theirs));
      setServed({ of: theirs, problems });
      setKeeping({ state: "kept", at: changedAt });
    },
    keepMine: () => {
      if (keeping.state !== "conflict") return;
      revision.current = keeping.theirs.revision;
      setKeeping({ state: "keeping" });
      const theirs = keeping.theirs.document as unknown as DraftDocument;
      step(change(change(history, theirs), history.present));
    },
    keepCopy: async (title) => {
      const document = { ...latest.current, title };
      const copy = await sendJson<DraftRow>("POST", "/api/drafts", { document });
      // Nothing of it is written over theirs when this page is left.
      saved.current = latest.current;
      await queries.invalidateQueries({ queryKey: ["drafts"] });
      return copy.checklist;
    },
    flush,
  };
};
