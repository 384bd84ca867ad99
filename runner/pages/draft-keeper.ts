import type { DeviceDatabase, Draft } from "../offline/database.ts";
import { saveDraft } from "../offline/drafts.ts";
import { isFull, makeRoom } from "../offline/room.ts";

/** Whether the device has the newest state, or why it has not. */
export type Keeping = "kept" | "full" | "failed";

/**
 * Hands every state of a draft to the device's store at once, in order: a page may end the moment
 * after, and a state that waited here for the save before it would be lost. The store finishes what
 * it was given in that order, so that an older state never overwrites a newer one. What cannot be
 * saved is held here and tried again with the next change: a draft is never dropped.
 */
export class DraftKeeper {
  /** The newest state, until the device has it. */
  #pending: Draft | null = null;
  #running = new Set<Promise<void>>();
  #ended = false;
  #keeping: Keeping = "kept";
  readonly #save: (draft: Draft) => Promise<void>;
  readonly #makeRoom: () => Promise<unknown>;
  /** Told whenever it changes. */
  onKeeping: (keeping: Keeping) => void = () => undefined;

  constructor(database: DeviceDatabase, now: () => number, save = saveDraft) {
    this.#save = (draft) => save(database, draft);
    this.#makeRoom = () => makeRoom(database, now(), true);
  }

  /** What the device does not have yet. */
  get unkept(): Draft | undefined {
    return this.#keeping === "kept" ? undefined : (this.#pending ?? undefined);
  }

  change(draft: Draft): void {
    if (this.#ended) return;
    this.#pending = draft;
    this.#hand(draft);
  }

  /** Resolves once everything changed so far is saved, or could not be. */
  async flush(): Promise<void> {
    if (this.#pending !== null && this.#running.size === 0 && !this.#ended)
      this.#hand(this.#pending);
    while (this.#running.size > 0) await Promise.all(this.#running);
  }

  #hand(draft: Draft): void {
    const run = this.#try(draft).finally(() => this.#running.delete(run));
    this.#running.add(run);
  }

  async #try(draft: Draft): Promise<void> {
    try {
      await this.#save(draft);
      this.#kept(draft);
    } catch (error) {
      if (!isFull(error)) return this.#tell("failed");
      try {
        await this.#makeRoom();
        // Only the newest is tried again: an older one would overwrite it.
        const newest = this.#pending;
        if (newest === null || this.#ended) return;
        await this.#save(newest);
        this.#kept(newest);
      } catch (again) {
        this.#tell(isFull(again) ? "full" : "failed");
      }
    }
  }

  #kept(draft: Draft): void {
    if (this.#pending !== draft) return;
    this.#pending = null;
    this.#tell("kept");
  }

  #tell(keeping: Keeping): void {
    if (keeping === this.#keeping) return;
    this.#keeping = keeping;
    this.onKeeping(keeping);
  }

  /** Nothing is saved any more: the draft has become an entry. */
  async end(): Promise<void> {
    await this.flush();
    this.#ended = true;
  }

  /** Writing the entry failed: changes are kept again. */
  resume(): void {
    this.#ended = false;
  }
}
