import type { DeviceDatabase, Draft } from "../offline/database.ts";
import { saveDraft } from "../offline/drafts.ts";

/**
 * Saves a draft at every change, at once: a save takes a millisecond or two, and what is written
 * has to outlive a page that ends the moment after. While one save runs the newest state waits for
 * it, so that an older state never overwrites a newer one and none is saved needlessly.
 */
export class DraftKeeper {
  #pending: Draft | null = null;
  #running: Promise<void> | null = null;
  #ended = false;
  readonly #save: (draft: Draft) => Promise<void>;

  constructor(database: DeviceDatabase, save = saveDraft) {
    this.#save = (draft) => save(database, draft);
  }

  change(draft: Draft): void {
    if (this.#ended) return;
    this.#pending = draft;
    void this.flush();
  }

  /** Resolves once everything changed so far is saved. */
  flush(): Promise<void> {
    this.#running ??= this.#drain().finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  async #drain(): Promise<void> {
    while (this.#pending) {
      const draft = this.#pending;
      this.#pending = null;
      await this.#save(draft);
    }
  }

  /** Nothing is saved any more: the draft has become an entry. */
  async end(): Promise<void> {
    this.#ended = true;
    await this.flush();
  }

  /** Writing the entry failed: changes are kept again. */
  resume(): void {
    this.#ended = false;
  }
}
