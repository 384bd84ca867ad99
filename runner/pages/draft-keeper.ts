import type { DeviceDatabase, Draft } from "../offline/database.ts";
import { saveDraft } from "../offline/drafts.ts";
import { isFull, withRoom } from "../offline/room.ts";

/** Whether the device has the newest state, or why it has not. */
export type Keeping = "kept" | "full" | "failed";

/**
 * Saves a draft at every change, at once: a save takes a millisecond or two, and what is written
 * has to outlive a page that ends the moment after. While one save runs the newest state waits for
 * it, so that an older state never overwrites a newer one and none is saved needlessly. What cannot
 * be saved is held here and tried again with the next change: a draft is never dropped.
 */
export class DraftKeeper {
  #pending: Draft | null = null;
  #running: Promise<void> | null = null;
  #ended = false;
  #keeping: Keeping = "kept";
  readonly #save: (draft: Draft) => Promise<void>;
  /** Told whenever it changes. */
  onKeeping: (keeping: Keeping) => void = () => undefined;

  constructor(database: DeviceDatabase, now: () => number, save = saveDraft) {
    this.#save = (draft) => withRoom(database, now, () => save(database, draft));
  }

  /** What the device does not have yet. */
  get unkept(): Draft | undefined {
    return this.#keeping === "kept" ? undefined : (this.#pending ?? undefined);
  }

  change(draft: Draft): void {
    if (this.#ended) return;
    this.#pending = draft;
    void this.flush();
  }

  /** Resolves once everything changed so far is saved, or could not be. */
  flush(): Promise<void> {
    this.#running ??= this.#drain().finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  async #drain(): Promise<void> {
    while (this.#pending && !this.#ended) {
      const draft = this.#pending;
      this.#pending = null;
      try {
        await this.#save(draft);
        this.#tell("kept");
      } catch (error) {
        this.#pending ??= draft;
        this.#tell(isFull(error) ? "full" : "failed");
        return;
      }
    }
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
